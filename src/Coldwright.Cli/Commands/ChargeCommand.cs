using System.CommandLine;
using Coldwright.Design.Charging;
using Coldwright.Fluids.Substances;
using Coldwright.Machine.Files;
using Coldwright.Quantities;
using Coldwright.Report.Charging;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Cli.Commands;

/// <summary><c>charge DIR</c>: the filling recipe.</summary>
internal static class ChargeCommand
{
    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("DIR") { Description = "the folder that holds machine.yaml" };
        var mixture = new Option<string?>("--mixture") { HelpName = "MIXTURE", Description = "charge this instead of the file's mixture, such as \"nitrogen 0.3, methane 0.7\"" };
        var mass = new Option<string?>("--mass") { HelpName = "MASS", Description = "so much, such as \"320 g\", instead of the file's mass or standstill pressure" };
        var vacuum = new Option<string?>("--vacuum") { HelpName = "PRESSURE", Description = "what the pump leaves, such as \"0.5 mbara\"" };
        var rinses = new Option<int?>("--rinses") { HelpName = "N", Description = "times dry gas is let in and pumped out again; left out: as many as are needed" };
        var scale = new Option<string?>("--scale") { HelpName = "MASS", Description = "how far the scale may be off, such as \"1 g\" (as when left out)" };
        var gauge = new Option<string?>("--gauge") { HelpName = "PRESSURE", Description = "how far the gauge may be off, such as \"0.05 bar\" (as when left out)" };
        var lost = new Option<string?>("--lost") { HelpName = "MASS", Description = "so much has leaked out: what to add" };
        var now = new Option<string?>("--now") { HelpName = "PRESSURE", Description = "standstill pressure now, such as \"11 barg\": what to add" };
        var warm = new Option<bool>("--warm-only") { Description = "leave out what circulates once it is cold, which takes longest" };
        var command = new Command("charge", "How to fill the loop: pump, rinse, gas after gas by gauge and scale, what circulates then.") { directory, mixture, mass, vacuum, rinses, scale, gauge, lost, now, warm };
        command.SetAction(p =>
        {
            var faces = Faces.Of(p, terminal);
            var folder = MachineFiles.ReadGood(p.GetRequiredValue(directory));
            double room = folder.Machine!.Room.PressurePa;
            double? Value(Option<string?> option, QuantityKind kind) => p.GetValue(option) is { } text ? OptionValue.Of(option.Name, text, kind, room) : null;
            if (p.GetValue(rinses) is < 0 or > 10) throw new InputException("--rinses", $"{p.GetValue(rinses)} rinses; 0 to 10 are expected");
            var options = new ChargeOptions
            {
                Mixture = p.GetValue(mixture) is { } text ? OptionValue.Mixture("--mixture", text, faces.Terminal) : null,
                MassKg = Value(mass, QuantityKind.Mass.Between(1e-3, 100)),
                VacuumPa = Value(vacuum, QuantityKind.AbsolutePressure.Between(0.01, 0.5 * room)),
                Rinses = p.GetValue(rinses),
                LostKg = Value(lost, QuantityKind.Mass.Between(1e-6, 100)),
                NowPa = Value(now, QuantityKind.Pressure.Between(0.1 * room, 1e8)),
                Circulation = !p.GetValue(warm),
            };
            if (Value(scale, QuantityKind.Mass.Between(1e-6, 1)) is { } kg) options = options with { ScaleKg = kg };
            if (Value(gauge, QuantityKind.PressureDifference.Between(1, 1e6)) is { } pa) options = options with { GaugePa = pa };
            return Run(folder, options, faces);
        });
        return command;
    }

    private static int Run(MachineFolder folder, ChargeOptions options, Faces faces)
    {
        if (faces.ReportFolder is { } reportFolder) SafeFile.MakeFolder(reportFolder);
        if (faces.Model == ModelChoice.Both) faces.Terminal.Note("charge asks one model; the reference model answers, --model cubic asks the other");
        var file = Path.Combine(folder.Directory, "machine.yaml");
        var stage = $"charge of {folder.Machine!.Name}";
        ChargeResult result;
        using (new Progress(faces.Terminal, () => stage))
            try
            {
                result = ChargePlanner.Plan(folder.Machine, folder.Layout!, folder.Shop, options, new RatingOptions { Model = faces.Model == ModelChoice.Cubic ? RatingModel.Cubic : RatingModel.Reference }, text => stage = text, faces.Terminal.Cancel);
            }
            catch (MissingKeysException e)
            {
                throw new InputException(file, [.. e.Keys.Select(k => $"add {k}")], "the space that the charge fills is worked out from these");
            }
            catch (ArgumentException e)
            {
                throw new InputException(file, $"the charge cannot be planned: {RatePart.Sentence(e)}");
            }
        var report = new ChargeReport { Machine = folder.Machine, Result = result, Notes = folder.Notes, Units = faces.Units };
        faces.Terminal.Output.Write(faces.Json ? ChargeJson.Write(report) : ChargeText.Write(report, faces.Colour));
        ReportPage.Write(faces, ChargePage.FileName, () => ChargePage.Write(report));
        if (result.Stopped) return ExitCode.Stopped;
        return result.StandsBelowLimits ? ExitCode.Done : ExitCode.No;
    }
}
