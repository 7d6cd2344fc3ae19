using System.CommandLine;
using Coldwright.Report.Next;
using Coldwright.Runs.Next;

namespace Coldwright.Cli.Commands;

/// <summary><c>next RUN</c>: changes ranked by the litres per hour they gain on the machine as the run found it.</summary>
internal static class NextCommand
{
    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("RUN") { Description = "the run's folder, which holds run.yaml and the logger's file" };
        var command = new Command("next", "What to change next: changes ranked by litres per hour, on the machine as the run found it.") { directory };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(directory), Faces.Of(parsed, terminal)));
        return command;
    }

    private static int Run(string directory, Faces faces)
    {
        if (faces.Model == ModelChoice.Both) faces.Terminal.Note("next follows the cooler with one fluid model; the reference model answers, --model cubic is quicker");
        if (faces.ReportFolder is { } reportFolder) SafeFile.MakeFolder(reportFolder);
        var (record, cooler) = RunFiles.Read(directory, faces);
        NextResult result;
        var stage = $"explaining {record.Name}";
        using (new Progress(faces.Terminal, () => stage)) result = NextStudy.Of(record, cooler.Layout!, faces.Model == ModelChoice.Cubic, text => stage = text, faces.Terminal.Cancel);
        var report = new NextReport { Machine = record.Machine!, Run = record.Name, Result = result, Findings = FindingsText.For(cooler), Units = faces.Units };
        faces.Terminal.Output.Write(faces.Json ? NextJson.Write(report) : NextText.Write(report, faces.Colour));
        if (faces.ReportFolder is { } target)
        {
            var page = Path.Combine(target, NextPage.FileName);
            SafeFile.Write(page, w => w.Write(NextPage.Write(report)));
            // JSON stays alone on standard output.
            (faces.Json ? faces.Terminal.Error : faces.Terminal.Output).WriteLine($"Report page: {page}");
        }
        return ExitCode.Done;
    }
}
