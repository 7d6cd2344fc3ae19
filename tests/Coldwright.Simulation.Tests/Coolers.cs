using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Machine.Layout;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.Tests;

/// <summary>The example coolers and small changes to them.</summary>
internal static class Coolers
{
    public static string ExamplesPath
    {
        get
        {
            var dir = new DirectoryInfo(AppContext.BaseDirectory);
            while (dir is not null && !File.Exists(Path.Combine(dir.FullName, "Coldwright.slnx"))) dir = dir.Parent;
            return Path.Combine(dir!.FullName, "examples");
        }
    }

    public static MachineFolder Folder(string example)
    {
        var folder = MachineFolderReader.Read(Path.Combine(ExamplesPath, example));
        if (!folder.IsGood) throw new InvalidOperationException(string.Join("\n", folder.Problems));
        return folder;
    }

    public static RatingResult Rate(MachineDescription machine, RatingModel model = RatingModel.Reference, double? atK = null, RatingOptions? options = null)
    {
        if (!LoopLayout.TryFind(machine, out var layout, out var refusals)) throw new InvalidOperationException(string.Join("\n", refusals));
        return CoolerRating.Rate(machine, layout, Folder("workshop").Shop!, (options ?? new RatingOptions()) with { Model = model, OperatingTemperatureK = atK });
    }

    public static MachineDescription With<T>(this MachineDescription machine, Func<T, Part> change) where T : Part =>
        machine with { Parts = machine.Parts.Select(p => p is T t ? change(t) : p).ToArray() };

    /// <summary>The same cooler without its precooler; the lines are joined past it.</summary>
    public static MachineDescription WithoutPrecooler(this MachineDescription machine) => machine with
    {
        Parts = machine.Parts.Where(p => p is not PrecoolerPart).ToArray(),
        Lines = machine.Lines.Where(l => !l.From.StartsWith("precooler", StringComparison.Ordinal)).Select(l => l.To switch
        {
            "precooler.high" => l with { To = "recuperator.high" },
            "precooler.feed" => l with { To = "vessel" },
            _ => l,
        }).ToArray(),
    };

    /// <summary>Enthalpy taken up in the coil, J/mol, and W.</summary>
    public static (double PerMol, double Watts) CoilCooling(this ModelRating r)
    {
        double perMol = r.Loop.Points.Single(p => p.Name == "coil outlet").MolarEnthalpy - r.Loop.Points.Single(p => p.Name == "throttle outlet").MolarEnthalpy;
        return (perMol, perMol * r.Loop.MolarFlow);
    }
}
