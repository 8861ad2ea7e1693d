# Reads the drawings named on the command line with ezdxf (package
# python3-ezdxf), audits them, and prints what is in them as JSON.
import json
import sys

import ezdxf
from ezdxf import recover


def xy(p):
    return [p[0], p[1]]


def entity(e):
    d = e.dxf
    out = {"Type": e.dxftype(), "Layer": d.layer, "Linetype": d.get("linetype", ""), "Colour": d.color}
    kind = e.dxftype()
    if kind == "LINE":
        out["Points"] = [xy(d.start), xy(d.end)]
    elif kind == "POLYLINE":
        out["Points"] = [xy(v.dxf.location) for v in e.vertices]
        out["Bulges"] = [v.dxf.get("bulge", 0) for v in e.vertices]
        out["Closed"] = e.is_closed
        out["Width"] = d.get("default_start_width", 0)
    elif kind == "SOLID":
        out["Points"] = [xy(d.vtx0), xy(d.vtx1), xy(d.vtx2), xy(d.vtx3)]
    elif kind in ("CIRCLE", "ARC"):
        out["Points"], out["Radius"] = [xy(d.center)], d.radius
        if kind == "ARC":
            out["Start"], out["End"] = d.start_angle, d.end_angle
    elif kind == "TEXT":
        out["Align"] = d.halign
        out["Points"] = [xy(d.insert)]
        if d.halign:
            out["Points"].append(xy(d.align_point))
        out["Text"], out["Height"], out["Rotation"] = d.text, d.height, d.rotation
    return out


def dashes(lt):
    return [tag.value for tag in lt.pattern_tags.tags if tag.code == 49]


def drawing(path):
    ezdxf.readfile(path)  # fails where the other one mends
    doc, audit = recover.readfile(path)
    h = doc.header
    return {
        "Version": doc.dxfversion,
        "Errors": [str(e.message) for e in audit.errors],
        "Fixes": [str(e.message) for e in audit.fixes],
        "Header": {name: h[name] for name in ("$INSUNITS", "$MEASUREMENT", "$LUNITS", "$LTSCALE")},
        "Extents": [xy(h["$EXTMIN"]), xy(h["$EXTMAX"])],
        "Limits": [xy(h["$LIMMIN"]), xy(h["$LIMMAX"])],
        "Layers": [layer.dxf.name for layer in doc.layers],
        "Linetypes": {lt.dxf.name: dashes(lt) for lt in doc.linetypes},
        "Entities": [entity(e) for e in doc.modelspace()],
    }


json.dump([drawing(path) for path in sys.argv[1:]], sys.stdout)
