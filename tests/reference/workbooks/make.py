#!/usr/bin/env python3
"""Writes trays.* (three sheets, with a fault), trays_whole.* (one sheet) and stray_*.* (one sheet, and one cell far from its table) as .xlsx and .ods, by hand from the zip and XML that the standards ask for
(ECMA-376 part 1; OASIS OpenDocument 1.3), with python's zipfile. What stands in them is invented."""

import datetime
import zipfile
from string import ascii_uppercase
from xml.sax.saxutils import escape

DAY = datetime.date
SHEETS = [
    ("Empty", []),
    ("Trays now", [
        ["Nursery of the school"],
        [],
        ["Tray", "Species", "Qty", "Sown on", "Note"],
        ["t-1", "coffee", 41, DAY(2026, 3, 14), 'two words,\n"so"'],
        ["t-2", "avocado", 12.5, DAY(2026, 3, 4), None],
    ]),
    ("Beds", [["Bed", "Length"], ["A1", 20]]),
]
WHOLE = [
    ("Trays now", [
        ["Tray", "Species", "Qty", "Sown on"],
        ["t-1", "coffee", 41, DAY(2026, 3, 14)],
        ["t-2", "avocado", 12, DAY(2026, 3, 4)],
    ]),
]
STAMP = (2026, 1, 1, 0, 0, 0)


def put(book, name, text, stored=False):
    info = zipfile.ZipInfo(name, STAMP)
    info.compress_type = zipfile.ZIP_STORED if stored else zipfile.ZIP_DEFLATED
    book.writestr(info, text)


def xlsx_cell(at, value):
    if value is None:
        return ""
    if isinstance(value, str):
        return f'<c r="{at}" t="inlineStr"><is><t xml:space="preserve">{escape(value)}</t></is></c>'
    if isinstance(value, datetime.date):
        return f'<c r="{at}" s="1"><v>{(value - DAY(1899, 12, 30)).days}</v></c>'
    return f'<c r="{at}"><v>{value}</v></c>'


def xlsx(file, sheets_of, stray=None):
    head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>'
    main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
    rels = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
    package = "http://schemas.openxmlformats.org/package/2006"
    kind = "application/vnd.openxmlformats-officedocument.spreadsheetml"
    with zipfile.ZipFile(file, "w") as book:
        numbers = range(1, len(sheets_of) + 1)
        parts = "".join(f'<Override PartName="/xl/worksheets/sheet{n}.xml" ContentType="{kind}.worksheet+xml"/>' for n in numbers)
        put(book, "[Content_Types].xml", f'{head}<Types xmlns="{package}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="{kind}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="{kind}.styles+xml"/>{parts}</Types>')
        put(book, "_rels/.rels", f'{head}<Relationships xmlns="{package}/relationships"><Relationship Id="rId1" Type="{rels}/officeDocument" Target="xl/workbook.xml"/></Relationships>')
        sheets = "".join(f'<sheet name="{name}" sheetId="{n}" r:id="rId{n}"/>' for n, (name, _) in zip(numbers, sheets_of))
        put(book, "xl/workbook.xml", f'{head}<workbook xmlns="{main}" xmlns:r="{rels}"><sheets>{sheets}</sheets></workbook>')
        links = "".join(f'<Relationship Id="rId{n}" Type="{rels}/worksheet" Target="worksheets/sheet{n}.xml"/>' for n in numbers)
        put(book, "xl/_rels/workbook.xml.rels", f'{head}<Relationships xmlns="{package}/relationships">{links}<Relationship Id="rId9" Type="{rels}/styles" Target="styles.xml"/></Relationships>')
        put(book, "xl/styles.xml", f'{head}<styleSheet xmlns="{main}"><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs></styleSheet>')
        for n, (_, rows) in zip(numbers, sheets_of):
            lines = "".join(f'<row r="{r}">' + "".join(xlsx_cell(f"{chr(65 + c)}{r}", value) for c, value in enumerate(row)) + "</row>" for r, row in enumerate(rows, 1) if row)
            if stray:
                lines += f'<row r="{stray.lstrip(ascii_uppercase)}">{xlsx_cell(stray, "x")}</row>'
            put(book, f"xl/worksheets/sheet{n}.xml", f'{head}<worksheet xmlns="{main}"><sheetData>{lines}</sheetData></worksheet>')


def ods_cell(value):
    if value is None:
        return "<table:table-cell/>"
    if isinstance(value, str):
        lines = "".join(f"<text:p>{escape(line)}</text:p>" for line in value.split("\n"))
        return f'<table:table-cell office:value-type="string">{lines}</table:table-cell>'
    if isinstance(value, datetime.date):
        return f'<table:table-cell office:value-type="date" office:date-value="{value}"><text:p>{value}</text:p></table:table-cell>'
    return f'<table:table-cell office:value-type="float" office:value="{value}"><text:p>{value}</text:p></table:table-cell>'


def ods(file, sheets_of, stray=None):
    space = "urn:oasis:names:tc:opendocument:xmlns:"
    kind = "application/vnd.oasis.opendocument.spreadsheet"
    head = '<?xml version="1.0" encoding="UTF-8"?>'
    with zipfile.ZipFile(file, "w") as book:
        put(book, "mimetype", kind, stored=True)
        put(book, "META-INF/manifest.xml", f'{head}<manifest:manifest xmlns:manifest="{space}manifest:1.0" manifest:version="1.3"><manifest:file-entry manifest:full-path="/" manifest:media-type="{kind}"/><manifest:file-entry manifest:full-path="content.xml" manifest:media-type="text/xml"/></manifest:manifest>')
        tables = ""
        for name, rows in sheets_of:
            lines = "".join("<table:table-row>" + ("".join(ods_cell(value) for value in row) or "<table:table-cell/>") + "</table:table-row>" for row in rows)
            if stray:
                rows_before, columns_before = stray
                lines += f'<table:table-row table:number-rows-repeated="{rows_before - len(rows)}"><table:table-cell/></table:table-row>'
                lines += f'<table:table-row><table:table-cell table:number-columns-repeated="{columns_before}"/>{ods_cell("x")}</table:table-row>'
            tables += f'<table:table table:name="{name}">{lines}</table:table>'
        put(book, "content.xml", f'{head}<office:document-content xmlns:office="{space}office:1.0" xmlns:table="{space}table:1.0" xmlns:text="{space}text:1.0" office:version="1.3"><office:body><office:spreadsheet>{tables}</office:spreadsheet></office:body></office:document-content>')


for name, of in (("trays", SHEETS), ("trays_whole", WHOLE)):
    xlsx(name + ".xlsx", of)
    ods(name + ".ods", of)
xlsx("stray_cell.xlsx", WHOLE, "XFD1048576")
xlsx("stray_in_26_columns.xlsx", WHOLE, "Z1048576")
ods("stray_cell.ods", WHOLE, (1048575, 16383))
ods("stray_in_26_columns.ods", WHOLE, (1048575, 25))
