using System.Text.Json;

namespace Coldwright.Cli.Tests;

/// <summary><c>state</c> with good input. Figures come from elsewhere and are named; the rest are identities.</summary>
public class StateTests
{
    private static JsonElement Json(params string[] args)
    {
        var run = CliRun.Of(["state", .. args, "--json"]).MustSucceed();
        Assert.Equal("", run.Error);
        using var document = JsonDocument.Parse(run.Output);
        return document.RootElement.Clone();
    }

    private static double Number(JsonElement e, string key) => e.GetProperty(key).GetDouble();

    /// <summary>Span et al., J. Phys. Chem. Ref. Data 29 (2000) 1361: normal boiling point of nitrogen 77.355 K.</summary>
    [Fact]
    public void NitrogenBoilsWhereItsPaperSays()
    {
        var state = Json("nitrogen", "-p", "101325 Pa", "--vapour-fraction", "0");
        Assert.Equal("coldwright/state/1", state.GetProperty("schema").GetString());
        Assert.Equal(77.355, Number(state, "temperature_K"), 0.002);
        Assert.Equal(0, state.GetProperty("warnings").GetArrayLength());
        Assert.Equal(0, state.GetProperty("findings").GetArrayLength());
    }

    [Fact]
    public void EveryPairLeadsToTheSameState()
    {
        const string mixture = "nitrogen 0.35, methane 0.65";
        var first = Json(mixture, "-T", "-150 °C", "-p", "5 barg");
        var (h, s, q) = (Number(first, "molar_enthalpy_J_mol"), Number(first, "molar_entropy_J_molK"), Number(first, "vapour_fraction"));
        Assert.InRange(q, 0.01, 0.99);
        string Text(double value) => value.ToString("R", System.Globalization.CultureInfo.InvariantCulture);
        foreach (var other in (JsonElement[])
            [
                Json(mixture, "-p", "5 barg", "--enthalpy", Text(h) + " J/mol"),
                Json(mixture, "-p", "5 barg", "--entropy", Text(s) + " J/(mol K)"),
                Json(mixture, "-p", "5 barg", "--vapour-fraction", Text(q)),
                Json(mixture, "-T", "-150 °C", "--vapour-fraction", Text(q)),
            ])
        {
            Assert.Equal(123.15, Number(other, "temperature_K"), 1e-5);
            Assert.Equal(601325, Number(other, "pressure_Pa"), 0.1);
            Assert.Equal(h, Number(other, "molar_enthalpy_J_mol"), 0.01);
        }
    }

    [Fact]
    public void GaugeIsCountedFromOneAtmosphereAndSaid()
    {
        var run = CliRun.Of("state", "nitrogen", "-T", "300 K", "-p", "17 barg").MustSucceed();
        Assert.Contains("1801325 Pa", run.Output, StringComparison.Ordinal);
        Assert.Contains("Gauge pressures are counted from 101325 Pa absolute", run.Output, StringComparison.Ordinal);
        Assert.Contains("Caloric zero", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("-150 °C")]
    [InlineData("\u2212150 °C")]
    [InlineData("-150C")]
    [InlineData("123.15 K")]
    [InlineData("-238 °F")]
    public void ATemperatureBelowZeroIsNoOption(string temperature) =>
        Assert.Equal(123.15, Number(Json("nitrogen", "-T", temperature, "-p", "1 bara"), "temperature_K"), 1e-9);

    [Fact]
    public void BothModelsAnswerSideBySide()
    {
        var state = Json("nitrogen=0.35;methane=0.65", "-T", "200 K", "-p", "20 bara", "--model", "both");
        Assert.Equal("reference", state.GetProperty("model").GetString());
        Assert.Equal("cubic", state.GetProperty("second_opinion").GetProperty("model").GetString());
        var text = CliRun.Of("state", "nitrogen=0.35;methane=0.65", "-T", "200 K", "-p", "20 bara", "--model", "both").MustSucceed().Output;
        Assert.Contains("reference model", text, StringComparison.Ordinal);
        Assert.Contains("cubic model", text, StringComparison.Ordinal);
    }

    [Fact]
    public void MassFractionsBecomeMoleFractions()
    {
        // Equal masses: mole fractions in the inverse ratio of the molar masses, 28.01348 and 16.0428 g/mol.
        var mixture = Json("nitrogen 0.5, methane 0.5", "--mass", "-T", "300 K", "-p", "1 bara").GetProperty("mixture");
        Assert.Equal(16.0428 / (16.0428 + 28.01348), mixture.GetProperty("nitrogen").GetDouble(), 1e-9);
    }

    [Fact]
    public void NormalisedFractionsAndEstimatedPairsAreSaid()
    {
        var warnings = Json("argon 0.5, ethane 0.4995", "-T", "300 K", "-p", "1 bara").GetProperty("warnings").EnumerateArray().Select(w => w.GetString()!).ToArray();
        Assert.Contains(warnings, w => w.Contains("normalised", StringComparison.Ordinal));
        Assert.Contains(warnings, w => w.Contains("argon+ethane", StringComparison.Ordinal));
    }

    [Fact]
    public void AMixtureOutsideTheRangeOfSomeAnswersWithAWarning()
    {
        var warnings = Json("nitrogen 0.9, isobutane 0.1", "-T", "90 K", "-p", "1 bara").GetProperty("warnings").EnumerateArray().Select(w => w.GetString()!).ToArray();
        Assert.Contains(warnings, w => w.Contains("triple point", StringComparison.Ordinal) && w.Contains("isobutane", StringComparison.Ordinal));
    }

    /// <summary>
    /// Lemmon, Jacobsen, Int. J. Thermophys. 25 (2004) 21, and Mulero, Cachadina, Parra, J. Phys. Chem. Ref. Data 41 (2012) 043105, evaluated by CoolProp 8.0.0
    /// on the saturation line of nitrogen at 63.21 K.
    /// </summary>
    [Fact]
    public void TransportPropertiesAreThere()
    {
        var state = Json("nitrogen", "-T", "63.21 K", "--vapour-fraction", "0.5");
        Assert.Equal(0.01219091836, Number(state, "surface_tension_N_m"), 1e-8);
        var phases = state.GetProperty("phases").EnumerateArray().ToArray();
        Assert.Equal(4.380589086e-06, Number(phases[0], "viscosity_Pa_s"), 1e-11);
        Assert.Equal(0.1731233339, Number(phases[1], "conductivity_W_mK"), 1e-6);
        var gas = Json("nitrogen 0.5, methane 0.5", "-T", "300 K", "-p", "1 bara");
        Assert.Equal(JsonValueKind.Null, gas.GetProperty("surface_tension_N_m").ValueKind);
        Assert.InRange(Number(gas.GetProperty("phases")[0], "viscosity_Pa_s"), 11e-6, 18e-6);

        var text = CliRun.Of("state", "nitrogen", "-T", "100 K", "--vapour-fraction", "0.5").MustSucceed().Output;
        foreach (var words in (string[])["viscosity", "µPa s", "mW/(m K)", "mN/m", "Lemmon, Jacobsen", "2 %"]) Assert.Contains(words, text, StringComparison.Ordinal);
        var warnings = Json("propane 0.3, isobutane 0.7", "-T", "90 K", "-p", "5 bara").GetProperty("warnings").EnumerateArray().Select(w => w.GetString()!).ToArray();
        Assert.Contains(warnings, w => w.StartsWith("viscosity", StringComparison.Ordinal) && w.Contains("extrapolated", StringComparison.Ordinal));
    }

    [Fact]
    public void UsUnitsComeFirstWhenAsked() => Assert.Contains("°F", CliRun.Of("state", "nitrogen", "-T", "300 K", "-p", "1 bara", "--units", "us").MustSucceed().Output, StringComparison.Ordinal);

    [Fact]
    public void NoSolutionIsTheAnswerNo()
    {
        // Above the critical temperature there is no vapour fraction.
        var run = CliRun.Of("state", "nitrogen", "-p", "50 bara", "--vapour-fraction", "0.5");
        Assert.Equal(ExitCode.No, run.Code);
        Assert.Equal("", run.Output);
        Assert.Contains("critical", run.Error, StringComparison.Ordinal);
    }
}
