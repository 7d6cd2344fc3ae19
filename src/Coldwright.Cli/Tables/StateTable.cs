using System.Globalization;
using Coldwright.Cli.States;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Transport;
using Coldwright.Numerics;

namespace Coldwright.Cli.Tables;

/// <summary>Many states: reads a table, refuses it whole when a row is wrong, answers each row, writes the answers.</summary>
internal static class StateTable
{
    private const int MostProblems = 20;

    /// <summary>Runs a table.</summary>
    /// <param name="input">The file to read.</param>
    /// <param name="output">The file to write.</param>
    /// <param name="byMass">True when fractions are by mass.</param>
    /// <param name="cubic">True for the cubic model.</param>
    /// <param name="faces">How to show it.</param>
    public static int Run(string input, string output, bool byMass, bool cubic, Faces faces)
    {
        var (header, rows) = TableReader.Read(input, byMass, MostProblems);
        if (Directory.Exists(output)) throw new InputException("--out", $"'{output}' is a folder; give the name of a file");
        if (!Directory.Exists(Path.GetDirectoryName(Path.GetFullPath(output)))) throw new InputException("--out", $"there is no folder for '{output}'");

        var writer = new AnswerColumns(header);
        var (done, answered) = (0, 0);
        var reasons = new List<string>();
        faces.Terminal.Cancel.ThrowIfCancellationRequested();
        SafeFile.Write(output, file =>
        {
            using var progress = new Progress(faces.Terminal, () => $"{done} of {rows.Count} states");
            var models = new Dictionary<string, (Flash, TransportModel)>(StringComparer.Ordinal);
            file.WriteLine(CsvText.Record(writer.Header));
            foreach (var row in rows)
            {
                if (faces.Terminal.Cancel.IsCancellationRequested) return false;
                var (state, status, reason) = Answer(row, cubic, models);
                if (state is null) reasons.Add($"line {row.Line}: {status}: {reason}");
                else answered++;
                file.WriteLine(CsvText.Record(writer.Row(row, state, status)));
                done++;
            }
            return true;
        });

        if (done < rows.Count)
        {
            faces.Terminal.Error.WriteLine($"coldwright: stopped after {done} of {rows.Count} states; they are kept in {output}{SafeFile.PartEnding}");
            return ExitCode.Stopped;
        }
        Say(output, rows.Count, answered, reasons, faces);
        return answered > 0 ? ExitCode.Done : ExitCode.No;
    }

    private static (FluidState? State, string Status, string Reason) Answer(StateRow row, bool cubic, Dictionary<string, (Flash Flash, TransportModel Transport)> models)
    {
        var names = row.Mixture.Names;
        var key = string.Join(';', names);
        if (!models.TryGetValue(key, out var model))
        {
            var flash = StateEngine.CreateFlash(names, cubic);
            models[key] = model = (flash, new TransportModel(flash.Model));
        }
        try
        {
            var state = new StateEngine(row.Mixture, model.Flash, model.Transport).Solve(row.Known, out _, out var outside);
            return outside is null ? (state!.State, "ok", "") : (null, "outside", outside);
        }
        catch (SolveException e)
        {
            // A row without an answer says so in its status; the rows after it are still wanted.
            return (null, Word(e.Report.Status), e.Report.Advice);
        }
    }

    private static string Word(SolveStatus status) => status switch
    {
        SolveStatus.Outside => "outside",
        SolveStatus.NoSolution => "no_solution",
        _ => "not_converged",
    };

    private static void Say(string output, int rows, int answered, List<string> reasons, Faces faces)
    {
        if (faces.Json)
            faces.Terminal.Output.Write(Report.Json.Text(w =>
            {
                w.WriteStartObject();
                w.WriteString("schema", "coldwright/state-table/1");
                w.WriteString("out", output);
                w.WriteNumber("rows", rows);
                w.WriteNumber("answered", answered);
                w.WriteStartArray("warnings");
                foreach (var reason in reasons) w.WriteStringValue(reason);
                w.WriteEndArray();
                w.WriteStartArray("findings");
                w.WriteEndArray();
                w.WriteEndObject();
            }));
        else faces.Terminal.Output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{output}: {rows} states, {answered} answered"));
        foreach (var reason in reasons.Take(MostProblems)) faces.Terminal.Note(reason);
        if (reasons.Count > MostProblems) faces.Terminal.Note($"{reasons.Count - MostProblems} more rows have no answer; the column 'status' says why");
    }
}
