using System.Globalization;
using System.Text;

namespace Coldwright.Cli.Tests;

/// <summary><c>state --table</c>.</summary>
public class TableTests
{
    private static Dictionary<string, string>[] Rows(string path)
    {
        var lines = File.ReadAllLines(path);
        var header = lines[0].Split(',');
        return [.. lines.Skip(1).Select(l => header.Zip(Split(l)).ToDictionary(p => p.First, p => p.Second))];
    }

    private static List<string> Split(string line)
    {
        var cells = new List<string>();
        var (cell, quoted) = (new StringBuilder(), false);
        foreach (var c in line + ",")
        {
            if (c == '"') quoted = !quoted;
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else cell.Append(c);
        }
        return cells;
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [Fact]
    public void RepeatsWhatWasGivenAndAddsTheRest()
    {
        using var folder = new TemporaryFolder();
        var input = folder.Write("in.csv", """
            # made for this test
            point,mixture,T_K,p_Pa,h_J_mol,vapour_fraction
            a,nitrogen,300,1e5,,
            b,nitrogen=0.35;methane=0.65,123.15,601325,,
            c,"nitrogen 0.35, methane 0.65",,601325,-9000,
            d,nitrogen,,101325,,0
            e,nitrogen,20,1e5,,
            f,nitrogen,,5e6,,0.5

            """);
        var run = CliRun.Of("state", "--table", input, "--out", folder["out.csv"]).MustSucceed();
        Assert.Contains("6 states, 4 answered", run.Output, StringComparison.Ordinal);
        Assert.Contains("line 7: outside", run.Error, StringComparison.Ordinal);
        Assert.Equal(["in.csv", "out.csv"], folder.Names);

        Assert.Equal("point,mixture,T_K,p_Pa,h_J_mol,vapour_fraction,s_J_molK,status,phases,rho_mol_m3,cp_J_molK,w_m_s,mu_Pa_s,k_W_mK,x,y,rho_liquid_mol_m3,rho_vapour_mol_m3",
            File.ReadLines(folder["out.csv"]).First());
        var rows = Rows(folder["out.csv"]);
        Assert.Equal(["a", "b", "c", "d", "e", "f"], rows.Select(r => r["point"]));
        Assert.Equal(["ok", "ok", "ok", "ok", "outside", "no_solution"], rows.Select(r => r["status"]));
        Assert.Equal("1e5", rows[0]["p_Pa"]);
        Assert.Equal("vapour", rows[0]["phases"]);
        Assert.NotEqual("", rows[0]["cp_J_molK"]);
        // Nitrogen at 300 K and zero density: 17.8771 uPa s, 25.9361 mW/(m K), printed by Lemmon, Jacobsen, Int. J. Thermophys. 25 (2004) 21; 1 bar adds little.
        Assert.Equal(17.88e-6, Number(rows[0]["mu_Pa_s"]), 0.05e-6);
        Assert.Equal(25.94e-3, Number(rows[0]["k_W_mK"]), 0.1e-3);
        Assert.Equal("", rows[1]["mu_Pa_s"]);
        Assert.Equal("", rows[0]["x"]);
        Assert.Equal("vapour+liquid", rows[1]["phases"]);
        Assert.StartsWith("nitrogen=", rows[1]["x"], StringComparison.Ordinal);
        Assert.Equal("", rows[1]["cp_J_molK"]);
        Assert.True(Number(rows[1]["rho_liquid_mol_m3"]) > Number(rows[1]["rho_vapour_mol_m3"]));
        Assert.Equal("-9000", rows[2]["h_J_mol"]);
        Assert.Equal("nitrogen 0.35, methane 0.65", rows[2]["mixture"]);
        // Span et al. 2000: normal boiling point 77.355 K.
        Assert.Equal(77.355, Number(rows[3]["T_K"]), 0.002);
        Assert.Equal("", rows[4]["rho_mol_m3"]);
    }

    [Fact]
    public void AnAnswerIsTheSameAsThatOfOneState()
    {
        using var folder = new TemporaryFolder();
        var input = folder.Write("in.csv", "mixture,T_K,p_Pa\nnitrogen=0.35;methane=0.65,200,2e6\n");
        CliRun.Of("state", "--table", input, "--out", folder["out.csv"], "--model", "cubic").MustSucceed();
        using var single = System.Text.Json.JsonDocument.Parse(CliRun.Of("state", "nitrogen=0.35;methane=0.65", "-T", "200 K", "-p", "2 MPa", "--model", "cubic", "--json").MustSucceed().Output);
        Assert.Equal(single.RootElement.GetProperty("molar_enthalpy_J_mol").GetDouble(), Number(Rows(folder["out.csv"])[0]["h_J_mol"]), 1e-9);
    }

    public static TheoryData<string, string[]> Wrong => new()
    {
        { "", ["empty", "mixture"] },
        { "mixture,T_K,p_Pa\n", ["no rows"] },
        { "mixtur,T_K,p_Pa\nnitrogen,300,1e5\n", ["'mixtur'", "did you mean 'mixture'"] },
        { "mixture,T_K,p_bar\nnitrogen,300,1\n", ["p_Pa", "needed"] },
        { "mixture,T_K,p_Pa,status\nnitrogen,300,1,ok\n", ["'status'", "computed"] },
        { "mixture,T_K,p_Pa\nnitrogn,300,1e5\nnitrogen,-5,1e5\nnitrogen,abc,1e5\nnitrogen,300,\n", ["line 2", "nitrogen", "line 3", "-5 K", "limit is 0 K", "line 4", "'abc'", "line 5", "1 of"] },
        { "mixture,T_K,p_Pa\nnitrogen 0.5, methane 0.5,300,1e5\n", ["line 2", "4 cells", "3 columns", "quotes"] },
        { "mixture,T_K,p_Pa\n\"nitrogen,300,1e5\n", ["line 2", "quote"] },
        { "\0\u0001\u0002\n", ["'mixture' is missing"] },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void AWrongTableIsRefusedWholeAndNothingIsWritten(string text, string[] words)
    {
        using var folder = new TemporaryFolder();
        var input = folder.Write("in.csv", text);
        folder.Write("out.csv", "what was there before");
        CliRun.Of("state", "--table", input, "--out", folder["out.csv"]).MustRefuse(words);
        Assert.Equal(["in.csv", "out.csv"], folder.Names);
        Assert.Equal("what was there before", File.ReadAllText(folder["out.csv"]));
    }

    [Fact]
    public void TenMegabytesOfSomethingElseAreRefusedQuickly()
    {
        using var folder = new TemporaryFolder();
        var input = folder.Write("in.csv", string.Concat(Enumerable.Repeat("0123456789abcdef,\n", 560_000)));
        var run = CliRun.Of("state", "--table", input, "--out", folder["out.csv"]);
        run.MustRefuse("mixture");
        Assert.Equal(["in.csv"], folder.Names);
    }

    [Fact]
    public void TooLargeATableNamesTheLimit()
    {
        using var folder = new TemporaryFolder();
        using (var file = File.Create(folder["in.csv"])) file.SetLength(60_000_000);
        CliRun.Of("state", "--table", folder["in.csv"], "--out", folder["out.csv"]).MustRefuse("60.0 MB", "50.0 MB");
    }

    [Fact]
    public void WhatDoesNotGoTogetherIsRefused()
    {
        using var folder = new TemporaryFolder();
        var input = folder.Write("in.csv", "mixture,T_K,p_Pa\nnitrogen,300,1e5\n");
        CliRun.Of("state", "--table", input).MustRefuse("--out");
        CliRun.Of("state", "nitrogen", "--table", input, "--out", folder["out.csv"]).MustRefuse("'nitrogen'");
        CliRun.Of("state", "-T", "300 K", "--table", input, "--out", folder["out.csv"]).MustRefuse("-T");
        CliRun.Of("state", "--table", input, "--out", folder["out.csv"], "--model", "both").MustRefuse("--model");
        CliRun.Of("state", "--table", folder["none.csv"], "--out", folder["out.csv"]).MustRefuse("none.csv");
        CliRun.Of("state", "--table", folder.Path, "--out", folder["out.csv"]).MustRefuse("folder");
        CliRun.Of("state", "--table", input, "--out", folder.Path).MustRefuse("folder");
        CliRun.Of("state", "--table", input, "--out", folder["no/such/out.csv"]).MustRefuse("no folder");
        Assert.Equal(["in.csv"], folder.Names);
    }

    [Fact]
    public void StoppedHalfwayItLeavesTheOldFile()
    {
        using var folder = new TemporaryFolder();
        var input = folder.Write("in.csv", "mixture,T_K,p_Pa\nnitrogen,300,1e5\n");
        folder.Write("out.csv", "before");
        var run = CliRun.Of(new CancellationToken(canceled: true), "state", "--table", input, "--out", folder["out.csv"]);
        Assert.Equal(ExitCode.Stopped, run.Code);
        Assert.Contains("stopped", run.Error, StringComparison.Ordinal);
        Assert.Equal("before", File.ReadAllText(folder["out.csv"]));
        Assert.Equal(["in.csv", "out.csv"], folder.Names);
    }

    // bytes of the unfinished file
    private static long Written(string folder)
    {
        try
        {
            return Directory.EnumerateFiles(folder, "*.writing").Sum(f => new FileInfo(f).Length);
        }
        catch (IOException)
        {
            return 0;
        }
    }

    [Fact]
    public void WhatWasDoneBeforeAStopIsKeptBesideTheFile()
    {
        using var folder = new TemporaryFolder();
        var rows = Enumerable.Range(0, 40_000).Select(i => string.Create(CultureInfo.InvariantCulture, $"nitrogen=0.3;methane=0.4;ethane=0.3,{100 + i / 1000.0},8e5"));
        var input = folder.Write("in.csv", "mixture,T_K,p_Pa\n" + string.Join('\n', rows) + "\n");
        folder.Write("out.csv", "before");
        // stopped as soon as the first rows are on disk
        using var cancel = new CancellationTokenSource();
        using (new Timer(_ => { if (!cancel.IsCancellationRequested && Written(folder.Path) > 2000) cancel.Cancel(); }, null, 0, 5))
        {
            var run = CliRun.Of(cancel.Token, "state", "--table", input, "--out", folder["out.csv"]);
            Assert.Equal(ExitCode.Stopped, run.Code);
            Assert.Contains("of 40000 states; they are kept in", run.Error, StringComparison.Ordinal);
        }
        Assert.Equal("before", File.ReadAllText(folder["out.csv"]));
        Assert.Equal(["in.csv", "out.csv", "out.csv.part"], folder.Names);
        Assert.True(Rows(folder["out.csv.part"]).Length > 1);
    }
}
