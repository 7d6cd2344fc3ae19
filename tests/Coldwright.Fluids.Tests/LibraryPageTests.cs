using System.Text.RegularExpressions;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>The ten-line program of docs/how-to/fluids-library.md: its text is compared with the lines compiled here, which are run.</summary>
public sealed class LibraryPageTests
{
    [Fact]
    public void The_program_on_the_page_is_the_one_below_and_runs()
    {
        var dir = new DirectoryInfo(AppContext.BaseDirectory);
        while (dir is not null && !File.Exists(Path.Combine(dir.FullName, "Coldwright.slnx"))) dir = dir.Parent;
        string page = File.ReadAllText(Path.Combine(dir!.FullName, "docs", "how-to", "fluids-library.md"));
        string source = File.ReadAllText(Path.Combine(dir.FullName, "tests", "Coldwright.Fluids.Tests", "LibraryPageTests.cs"));
        string program = Regex.Match(page, "```csharp\n(.*?)```", RegexOptions.Singleline).Groups[1].Value;
        foreach (var line in program.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            Assert.Contains(line, source, StringComparison.Ordinal);

        var console = Console.Out;
        using var output = new StringWriter();
        Console.SetOut(output);
        try
        {
            Program();
        }
        finally
        {
            Console.SetOut(console);
        }
        Assert.Contains("bubble point at 18 bar", output.ToString(), StringComparison.Ordinal);
    }

    private static void Program()
    {
        var model = ReferenceModel.Create(["nitrogen", "methane", "propane"]);
        foreach (var warning in model.Warnings) Console.WriteLine(warning);
        var flash = new Flash(model);                       // one per thread
        double[] z = [0.30, 0.40, 0.30];
        var state = flash.TemperaturePressure(115, 18e5, z); // K, Pa, mole fractions
        foreach (var phase in state.Phases) Console.WriteLine($"{phase.Kind}: {phase.Fraction:0.0000} mol/mol, {phase.MolarDensity:0} mol/m3");
        var bubble = flash.PressureVapourFraction(18e5, 0, z);
        Console.WriteLine($"bubble point at 18 bar: {bubble.TemperatureK:0.00} K");
    }
}
