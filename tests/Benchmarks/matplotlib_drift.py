"""The drift chart by matplotlib, for a fair race: takes the picture's numbers on its first line, then draws so many charts on each line.

Agg, no pyplot (which keeps every figure and is slower), the same size in pixels, the same elements: shaded band with its edges, dashed
baseline, dotted events, line with its interval solid and dashed, ringed points, labels, PNG into memory. What is counted is processor time of drawing
and packing; importing matplotlib and finding fonts is not counted.
"""
import io
import json
import sys
import time

import matplotlib

matplotlib.use("Agg")
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure

INK, BAND, EDGE, GREY = "#0B4F8A", "#2A9D8F", "#1B6B5A", "#52606D"


def draw(p):
    fig = Figure(figsize=(p["width"] / 100, p["height"] / 100), dpi=100)
    FigureCanvasAgg(fig)
    ax = fig.add_axes((0.09, 0.23, 0.71, 0.62))
    for side in ("top", "right", "left"):
        ax.spines[side].set_visible(False)
    ax.grid(axis="y", color="#E4E7EB", linewidth=1.5)
    ax.set_axisbelow(True)
    ax.tick_params(labelsize=21, colors=GREY, length=0)
    low, high = p["band"]
    ax.axhspan(low, high, color=BAND, alpha=0.15, linewidth=0)
    ax.axhline(low, color=EDGE, linewidth=1.8)
    ax.axhline(high, color=EDGE, linewidth=1.8)
    ax.axhline(p["baseline"], color=GREY, linewidth=1.8, linestyle="--")
    for at, label in p["events"]:
        ax.axvline(at, color=GREY, linewidth=2.2, linestyle=":")
        ax.annotate(label, (at, 1.02), xycoords=("data", "axes fraction"), fontsize=21, color=GREY)
    for part, style, alpha in ((p["fitted"], "-", 0.2), (p["forecast"], "--", 0.11)):
        x = [q[0] for q in part]
        ax.fill_between(x, [q[2] for q in part], [q[3] for q in part], color=INK, alpha=alpha, linewidth=0)
        ax.plot(x, [q[1] for q in part], color=INK, linewidth=3, linestyle=style)
    ax.plot([q[0] for q in p["points"]], [q[1] for q in p["points"]], "o", color=INK, markersize=15, markeredgecolor="white", markeredgewidth=2.5)
    for y, label, color in p["side"]:
        ax.annotate(label, (1.02, y), xycoords=("axes fraction", "data"), fontsize=21, color=color, va="center")
    fig.text(0.01, 0.95, p["caption"], fontsize=21, color=GREY)
    fig.text(0.09, 0.03, "engine hours", fontsize=21, color=GREY)
    fig.text(0.55, 0.03, "counted, level with 80 % interval", fontsize=21, color=GREY)
    ax.set_xlim(p["window"][0], p["window"][1])
    ax.set_ylim(p["window"][2], p["window"][3])
    out = io.BytesIO()
    fig.savefig(out, format="png")
    return out.getvalue()


picture = json.loads(sys.stdin.readline())
for line in sys.stdin:
    start = time.process_time()
    size = 0
    for _ in range(int(line)):
        size = len(draw(picture))
    print(json.dumps({"seconds": time.process_time() - start, "size": size, "version": matplotlib.__version__}), flush=True)
