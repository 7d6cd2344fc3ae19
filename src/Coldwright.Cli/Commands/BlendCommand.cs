using System.CommandLine;
using Coldwright.Design.Blending;
using Coldwright.Fluids.Substances;
using Coldwright.Machine.Files;
using Coldwright.Quantities;
using Coldwright.Report.Blending;
using Coldwright.Safety;
using Coldwright.Simulation.Parts;

namespace Coldwright.Cli.Commands;

/// <summary><c>blend DIR</c>: the mixture that gives most on this hardware from these gases.</summary>
internal static class BlendCommand
{
    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("DIR") { Description = "the folder that holds machine.yaml" };
        var goal = new Option<string?>("--for") { HelpName = "cooling|litres|lowest|endless", Description = "most cooling at a temperature (as when left out), most liquid, lowest temperature without load, or what an endless exchanger would leave" };
        var at = new Option<string?>("--at") { HelpName = "TEMPERATURE", Description = "load temperature, such as \"105 K\"; left out: the product's" };
        var gases = new Option<string?>("--gases") { HelpName = "LIST", Description = "gases that may be used, such as \"nitrogen, methane, ethane\"; left out: those of shop.yaml" };
        var burns = new Option<string?>("--flammable") { HelpName = "SHARE", Description = "at most so much of it burns, such as \"60 %\"" };
        var price = new Option<string?>("--price") { HelpName = "PRICE", Description = "a kilogram costs at most so much, such as \"12 per kg\"" };
        var hot = new Option<string?>("--discharge") { HelpName = "TEMPERATURE", Description = "hottest discharge; left out: the compressor's own" };
        var margin = new Option<string?>("--freezing-margin") { HelpName = "NUMBER", Description = "how far every gas stays from freezing; 1 is the brink, 1.3 as when left out" };
        var one = new Option<bool>("--one-liquid") { Description = "no second liquid before the throttle" };
        var error = new Option<string?>("--filling-error") { HelpName = "SHARE", Description = "what a mole fraction may be off after filling; \"1 %\" as when left out" };
        var command = new Command("blend", "The mixture that gives most on this hardware, from the gases at hand, under limits.") { directory, goal, at, gases, burns, price, hot, margin, one, error };
        command.SetAction(p =>
        {
            var faces = Faces.Of(p, terminal);
            var folder = MachineFiles.ReadGood(p.GetRequiredValue(directory));
            double room = folder.Machine!.Room.PressurePa;
            double? Value(Option<string?> option, QuantityKind kind) => p.GetValue(option) is { } text ? OptionValue.Of(option.Name, text, kind, room) : null;
            var options = new BlendOptions
            {
                Goal = Faces.OneOf(p.GetValue(goal), "--for", "cooling", "litres", "lowest", "endless") switch { "litres" => BlendGoal.Litres, "lowest" => BlendGoal.Lowest, "endless" => BlendGoal.Endless, _ => BlendGoal.Cooling },
                TemperatureK = Value(at, QuantityKind.Temperature.Between(62, 290)),
                Gases = Names(p.GetValue(gases)),
                Reference = faces.Model != ModelChoice.Cubic,
                Limits = new BlendLimits { Flammable = Value(burns, QuantityKind.Fraction), PricePerKg = Value(price, QuantityKind.PricePerMass), DischargeK = Value(hot, QuantityKind.Temperature.Between(300, 500)), OneLiquid = p.GetValue(one), FreezingMargin = Value(margin, QuantityKind.Number.Between(0, 100)) ?? new BlendLimits().FreezingMargin },
            };
            if (Value(error, QuantityKind.Fraction.Between(0, 0.05)) is { } share) options = options with { FillingError = share };
            return Run(folder, options, faces);
        });
        return command;
    }

    private static IReadOnlyList<string> Names(string? text)
    {
        if (text is null) return [];
        var names = new List<string>();
        var problems = new List<string>();
        foreach (var word in text.Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            if (SubstanceNames.TryFind(word, out var name)) names.Add(name);
            else problems.Add(SubstanceNames.UnknownMessage(Faces.Shorten(word)));
        if (problems.Count == 0 && names.Count is < 2 or > 8) problems.Add($"{names.Count} gases; 2 to 8 are expected");
        return problems.Count == 0 ? names : throw new InputException("--gases", problems);
    }

    private static int Run(MachineFolder folder, BlendOptions options, Faces faces)
    {
        if (faces.ReportFolder is { } reportFolder) SafeFile.MakeFolder(reportFolder);
        var stage = $"blend for {folder.Machine!.Name}";
        BlendResult result;
        using (new Progress(faces.Terminal, () => stage))
            try
            {
                result = BlendSearch.Find(folder.Machine, folder.Layout!, folder.Shop, options, text => stage = text, faces.Terminal.Cancel);
            }
            catch (MissingKeysException e)
            {
                throw new InputException(Path.Combine(folder.Directory, "machine.yaml"), [.. e.Keys.Select(k => $"add {k}")], "the mixtures are rated on the hardware that these describe");
            }
            catch (ArgumentException e)
            {
                throw new InputException("blend", $"no mixture can be sought: {RatePart.Sentence(e)}");
            }
        var machine = folder.Machine with { Charge = folder.Machine.Charge with { Mixture = result.Best.Mixture } };
        var report = new BlendReport { Machine = folder.Machine, Result = result, Findings = Cautions.For(machine, CautionInputs.Of(machine, folder.Shop)), Currency = folder.Shop?.Currency ?? "", Notes = folder.Notes, Units = faces.Units };
        faces.Terminal.Output.Write(faces.Json ? BlendJson.Write(report) : BlendText.Write(report, faces.Colour));
        ReportPage.Write(faces, BlendPage.FileName, () => BlendPage.Write(report));
        if (result.Stopped) return ExitCode.Stopped;
        return result.Best.Main.IsGood && !(result.Goal is BlendGoal.Cooling or BlendGoal.Litres && result.Best.Main.Merit <= 0) ? ExitCode.Done : ExitCode.No;
    }
}
