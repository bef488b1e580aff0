"""`python -m farmbook`."""

from __future__ import annotations

import sys

from farmbook import stopping

stopping.end_in_one_line()

from farmbook.cli import main  # noqa: E402 - an interrupt while it loads is met already

sys.exit(main())
