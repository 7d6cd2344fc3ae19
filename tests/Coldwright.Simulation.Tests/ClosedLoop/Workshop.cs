using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Machine.Layout;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.Tests.ClosedLoop;

/// <summary>The closed-loop example and changes of it, closed with the cubic model: quick, and the loop's balances do not know which model it is.</summary>
internal static class Workshop
{
    private static readonly Lazy<MachineFolder> Folder = new(() => MachineFolderReader.Read(Path.Combine(Root(), "examples", "closed-loop")));
    private static readonly Lazy<ClosedSolver> Once = new(() => Close(Machine));

    public static MachineDescription Machine => Folder.Value.Machine!;

    /// <summary>The example as it is, closed once for all tests.</summary>
    public static ClosedSolver Closed => Once.Value;

    public static ClosedSolver Close(MachineDescription machine, HeldPressure held = HeldPressure.Neither, ClosedSolver? seed = null) =>
        ClosedRating.Close(machine, Layout(machine), CubicModel.Create(machine.Charge.Mixture.Names), held, new RatingOptions(), Xunit.TestContext.Current.CancellationToken, null, seed);

    public static ModelRating Rate(ClosedSolver solver, bool sensitivity = false) =>
        ClosedRating.Of(solver, Folder.Value.Shop!, CubicModel.Create(solver.Hardware.Machine.Charge.Mixture.Names), new RatingOptions { Sensitivity = sensitivity }, default);

    public static LoopLayout Layout(MachineDescription machine) =>
        LoopLayout.TryFind(machine, out var layout, out var refusals) ? layout : throw new InvalidOperationException(string.Join("; ", refusals));

    /// <summary>The machine with a part changed.</summary>
    public static MachineDescription With<T>(Func<T, T> change, MachineDescription? from = null) where T : Part =>
        (from ?? Machine) with { Parts = [.. (from ?? Machine).Parts.Select(p => p is T part ? change(part) : p)] };

    public static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Coldwright.slnx"))) folder = folder.Parent;
        return folder!.FullName;
    }
}
