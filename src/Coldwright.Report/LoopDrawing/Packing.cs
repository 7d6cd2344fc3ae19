using Coldwright.Report.Charts;

namespace Coldwright.Report.Loops;

/// <summary>Keeps what stands on the drawing apart: something new goes to the highest free place at or below a given height.</summary>
internal sealed class Packing
{
    private const double Gap = 4;

    private readonly List<Box> _taken = [];

    /// <summary>All places kept free.</summary>
    public IReadOnlyList<Box> Taken => _taken;

    /// <summary>Keeps a place free.</summary>
    public void Take(Box box) => _taken.Add(box);

    /// <summary>The least top, from <paramref name="y"/> down, at which none of the boxes (given with their y relative to the top) touches anything.</summary>
    public double Fit(double y, params ReadOnlySpan<Box> boxes)
    {
        for (var moved = true; moved;)
        {
            moved = false;
            foreach (var box in boxes)
            {
                var at = (box with { Y = box.Y + y }).Grown(Gap);
                foreach (var taken in _taken)
                    if (taken.Overlaps(at))
                    {
                        y += taken.Bottom - at.Y + 0.01;
                        at = at with { Y = taken.Bottom + 0.01 };
                        moved = true;
                    }
            }
        }
        return y;
    }

    /// <summary>The lowest bottom of what reaches between two x.</summary>
    public double Bottom(double left, double right) => _taken.Where(b => b.X < right && b.Right > left).Select(b => b.Bottom).DefaultIfEmpty(0).Max();
}
