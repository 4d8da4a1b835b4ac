"""Asks other programs what they make of drawings, models and workbooks; ends with 1 when one of them complains."""

import json
import re
import struct
import sys
from fractions import Fraction

import ezdxf
import openpyxl
import trimesh

faults = []
measured_at_all = 0


def fault(path, text):
    faults.append(f"{path}: {text}")


def length(text):
    """Millimetres or inches that a dimension says, and the step it is rounded to."""
    if re.fullmatch(r"-?\d+", text):
        return float(text), 1.0
    found = re.fullmatch(r"(-?)(?:(\d+)'-)?(\d+)?(?:\s*(\d+/\d+))?\"", text)
    if not found:
        return None
    sign, feet, inches, part = found.groups()
    value = 12 * int(feet or 0) + int(inches or 0) + float(Fraction(part or 0))
    return (-value if sign else value), 0.125


def drawing(path):
    doc = ezdxf.readfile(path)
    audit = doc.audit()
    for entry in audit.errors + audit.fixes:
        fault(path, f"{entry.code}: {entry.message}")
    unit = {1: "in", 4: "mm"}.get(doc.header["$INSUNITS"])
    if unit is None:
        fault(path, "has no unit")
    layers = {layer.dxf.name for layer in doc.layers}
    model = doc.modelspace()
    for entity in model:
        if entity.dxf.layer not in layers or not re.fullmatch(r"[A-Z0-9_-]{10}", entity.dxf.layer):
            fault(path, f"layer {entity.dxf.layer}")
    dimensions = model.query("DIMENSION")
    global measured_at_all
    measured_at_all += len(dimensions)
    for entity in dimensions:
        said = length(entity.dxf.text)
        if said is None:
            fault(path, f"dimension {entity.dxf.text} is no length")
            continue
        style = doc.dimstyles.get(entity.dxf.dimstyle)
        measured = entity.get_measurement() * style.get_dxf_attrib("dimlfac", 1.0)
        # Half a step, and what binary fractions make of it.
        for found in (measured, entity.dxf.actual_measurement):
            if abs(found - said[0]) > 0.5 * said[1] + 1e-6:
                fault(path, f"dimension {entity.dxf.text} measures {found} {unit}")
        if entity.get_geometry_block() is None:
            fault(path, f"dimension {entity.dxf.text} has no picture")
    return f"{len(model)} entities, {len(dimensions)} dimensions, {unit}"


def model(path):
    with open(path, "rb") as file:
        data = file.read()
    size = struct.unpack_from("<I", data, 12)[0]
    told = {node["name"]: node["extras"].get("volume_m3") for node in json.loads(data[20 : 20 + size])["nodes"]}
    scene = trimesh.load(path, force="scene")
    names = list(scene.graph.nodes_geometry)
    if sorted(names) != sorted(told):
        fault(path, f"parts {sorted(names)} in place of {sorted(told)}")
    held = 0
    for name in names:
        place, geometry = scene.graph[name]
        mesh = scene.geometry[geometry].copy()
        mesh.apply_transform(place)
        if not (mesh.is_watertight and mesh.is_winding_consistent and mesh.volume > 0):
            fault(path, f"{name} leaks or is inside out")
        volume = told.get(name)
        if volume is not None:
            held += 1
            if abs(mesh.volume / volume - 1) > 1e-3:
                fault(path, f"{name} holds {mesh.volume} m3 in place of {volume}")
    if held == 0:
        fault(path, "no part tells what it holds")
    return f"{len(names)} parts, watertight"


def workbook(path):
    book = openpyxl.load_workbook(path)
    values = openpyxl.load_workbook(path, data_only=True)
    numbers = formulas = 0
    for sheet in book:
        if sheet.freeze_panes != "A2":
            fault(path, f"{sheet.title}: its heading moves away")
        for row in sheet.iter_rows(min_row=2):
            for cell in row:
                numbers += cell.data_type == "n" and cell.value is not None
                if cell.data_type == "f":
                    formulas += 1
                    if values[sheet.title][cell.coordinate].value is None:
                        fault(path, f"{sheet.title} {cell.coordinate}: a formula without its result")
                    if sheet.title != "Bill of materials":
                        fault(path, f"{sheet.title} {cell.coordinate}: a formula out of place")
    if not numbers:
        fault(path, "has no numbers")
    return f"{len(book.sheetnames)} sheets, {numbers} numbers, {formulas} formulas"


for path in sys.argv[1:]:
    ask = {"dxf": drawing, "glb": model, "xlsx": workbook}[path.rsplit(".", 1)[1]]
    print("/".join(path.replace("\\", "/").split("/")[-2:]) + ": " + ask(path))
if not measured_at_all:
    fault("drawings", "none has a dimension")
for text in faults:
    print(text, file=sys.stderr)
print(f"{len(sys.argv) - 1} files read by other programs, {len(faults)} faults")
sys.exit(1 if faults else 0)
