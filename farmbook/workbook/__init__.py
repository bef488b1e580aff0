"""The workbook: the only place where spreadsheet libraries are used. XlsxWriter writes, openpyxl reads."""
