using System.CommandLine;
using Coldwright.Cli.States;
using Coldwright.Fluids.Envelopes;
using Coldwright.Fluids.Substances;
using Coldwright.Report.Envelopes;

namespace Coldwright.Cli.Commands;

/// <summary><c>envelope MIXTURE</c>: every phase boundary of a mixture.</summary>
internal static class EnvelopeCommand
{
    private static readonly Argument<string?> _mixture = new("MIXTURE") { Arity = ArgumentArity.ZeroOrOne, Description = "such as \"nitrogen 0.35, methane 0.65\"" };
    private static readonly Option<bool> _byMass = new("--mass") { Description = "the mixture's fractions are by mass" };
    private static readonly Option<bool> _hidden = new("--hidden") { Description = "also critical points that other phases hide" };
    private static readonly Option<string?> _table = new("--table") { HelpName = "OUT.csv", Description = "write the points of all lines into this file" };

    public static Command Create(Terminal terminal)
    {
        var command = new Command("envelope", "Bubble, dew, three-phase and freezing lines and critical points of a mixture.") { _mixture, _byMass, _hidden, _table };
        command.SetAction(parsed => Run(parsed, Faces.Of(parsed, terminal)));
        return command;
    }

    private static int Run(ParseResult parsed, Faces faces)
    {
        const string example = "for example: coldwright envelope \"nitrogen 0.35, methane 0.65\"";
        var text = parsed.GetValue(_mixture) ?? throw new InputException("envelope", "a mixture is missing", example);
        var mixture = MixtureReading.Read(text, parsed.GetValue(_byMass), out var problems, out var notes) ?? throw new InputException("MIXTURE", problems);
        var present = Present(mixture);
        if (present.Names.Count == 1)
            throw new InputException("MIXTURE", $"{present.Names[0]} alone is a pure substance: it boils at one temperature for each pressure and has no envelope",
                $"its boiling point: coldwright state {present.Names[0]} -p \"1 bara\" --vapour-fraction 0; an envelope needs two substances, {example}");
        // Asked before the work: a place that cannot be written is better known at once.
        if (faces.ReportFolder is { } folder) SafeFile.MakeFolder(folder);
        var table = parsed.GetValue(_table);
        if (table is not null) CheckFile(table);

        var report = new EnvelopeReport
        {
            Mixture = present,
            Envelopes = [.. (faces.Model switch { ModelChoice.Both => (bool[])[false, true], ModelChoice.Cubic => [true], _ => [false] }).Select(cubic => Trace(present, cubic, parsed.GetValue(_hidden), notes, faces))],
            Units = faces.Units,
            RoomPressurePa = StandardRoom.PressurePa,
        };
        faces.Terminal.Output.Write(faces.Json ? EnvelopeJson.Write(report) : EnvelopeText.Write(report, faces.Colour));
        // JSON stays alone on standard output.
        var say = faces.Json ? faces.Terminal.Error : faces.Terminal.Output;
        if (table is not null)
        {
            SafeFile.Write(table, w => EnvelopeCsv.Write(report, w));
            say.WriteLine($"Table: {table}");
        }
        if (faces.ReportFolder is { } target)
        {
            var page = Path.Combine(target, EnvelopePage.FileName);
            SafeFile.Write(page, w => w.Write(EnvelopePage.Write(report)));
            say.WriteLine($"Report page: {page}");
        }
        return report.Main.Envelope.Lines.Count > 0 ? ExitCode.Done : ExitCode.No;
    }

    private static ModelEnvelope Trace(Composition mixture, bool cubic, bool hidden, IReadOnlyList<string> notes, Faces faces)
    {
        var model = StateEngine.CreateFlash(mixture.Names, cubic).Model;
        using var progress = new Progress(faces.Terminal, () => $"tracing the envelope, {model.Name} model");
        var envelope = EnvelopeTracer.Trace(model, mixture.MoleFractions, new EnvelopeWindow { HiddenCriticalPoints = hidden }, faces.Terminal.Cancel);
        return new ModelEnvelope(model.Name, envelope, [.. notes, .. model.Warnings]);
    }

    // A substance given with 0 has no part in any phase.
    private static Composition Present(Composition mixture)
    {
        var kept = Enumerable.Range(0, mixture.Names.Count).Where(i => mixture.MoleFractions[i] > 0).ToArray();
        return new Composition([.. kept.Select(i => mixture.Names[i])], [.. kept.Select(i => mixture.MoleFractions[i])]);
    }

    private static void CheckFile(string file)
    {
        if (Directory.Exists(file)) throw new InputException("--table", $"'{file}' is a folder; give the name of a file");
        if (!Directory.Exists(Path.GetDirectoryName(Path.GetFullPath(file)))) throw new InputException("--table", $"there is no folder for '{file}'");
    }
}
