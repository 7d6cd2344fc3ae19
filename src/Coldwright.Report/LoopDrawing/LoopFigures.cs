using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Safety;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Loops;

/// <summary>What is written on the drawing of a loop: figures and marks, each at a part or line.</summary>
public sealed record LoopFigures
{
    /// <summary>No figures: the machine as described.</summary>
    public static LoopFigures None { get; } = new();

    /// <summary>Figures; several at one place are written in this order.</summary>
    public IReadOnlyList<LoopFigure> Entries { get; init; } = [];

    /// <summary>Findings to be seen.</summary>
    public IReadOnlyList<LoopMark> Marks { get; init; } = [];

    /// <summary>The name of a line as a place: <c>aftercooler to recuperator.high</c>.</summary>
    /// <param name="line">Line.</param>
    public static string PlaceOf(Line line) => $"{line.From} to {line.To}";

    /// <summary>The figures of a rating at its operating point.</summary>
    /// <param name="rating">Rating.</param>
    /// <param name="layout">Layout of the machine that was rated.</param>
    public static LoopFigures From(ModelRating rating, LoopLayout layout) => RatingFigures.Of(rating, layout);

    /// <summary>The same with a mark for every finding that is a danger or serious.</summary>
    /// <param name="findings">Findings of any grade.</param>
    public LoopFigures With(IEnumerable<Finding> findings) => this with
    {
        Marks = [.. Marks, .. findings.Where(f => f.Grade is Grade.Stop or Grade.Serious).OrderBy(f => f.Grade)
            .Select(f => new LoopMark(f.Part, f.Grade == Grade.Stop ? "danger" : "serious", f.Rule))],
    };

    internal IEnumerable<LoopFigure> At(string place) => Entries.Where(e => e.Place == place);

    /// <summary>The gravest mark of a place with the reasons of all of them; null without any.</summary>
    internal LoopMark? MarkAt(string place)
    {
        var here = Marks.Where(m => m.Place == place).ToArray();
        return here.Length == 0 ? null : here[0] with { Why = string.Join("; ", here.Select(m => $"{m.Word}: {m.Why}")) };
    }
}
