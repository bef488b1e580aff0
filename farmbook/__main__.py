"""`python -m farmbook`."""

from __future__ import annotations

import sys

from farmbook.cli import main

sys.exit(main())
