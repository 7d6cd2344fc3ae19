using System.Text;
using Coldwright.Blind;
using Coldwright.Blind.Physics;
using Coldwright.Machine.Files;
using Coldwright.Runs.Explain;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Tests.Explain;

/// <summary>The model's runs of the blind machine, made once for the six cases; the cubic model, which is quicker.</summary>
public sealed class BlindRuns
{
    /// <summary>The machine's folder.</summary>
    internal MachineFolder Folder { get; } = MachineFolderReader.ReadTexts(BlindMachine.Yaml);

    /// <summary>The runs.</summary>
    internal ModelRuns Runs { get; }

    public BlindRuns() => Runs = ModelRuns.Make(Folder.Machine!, Folder.Layout!, BlindMarch.StopS, 2.5 * (BlindMarch.EndS - BlindMarch.StopS) + 600, cubic: true, cancel: TestContext.Current.CancellationToken);

    /// <summary>Explains a machine of another hand.</summary>
    internal Explanation Explain(Truth truth, SensorSet set) => Explain(Log(truth, set), set);

    /// <summary>What another hand wrote of a machine.</summary>
    internal (string Run, string Log) Log(Truth truth, SensorSet set) => LogWriter.Write(CaseMaker.Of(1, truth, TestContext.Current.CancellationToken), set, 1);

    /// <summary>Explains what was written, held against an earlier run where one is given.</summary>
    internal Explanation Explain((string Run, string Log) written, SensorSet set, (string Run, string Log)? earlier = null) =>
        Explainer.Explain(Read(written, set), Folder.Layout!, Runs, follow: false, earlier: earlier is { } good ? Read(good, set) : null, cancel: TestContext.Current.CancellationToken);

    /// <summary>The record of what was written.</summary>
    internal RunRecord Read((string Run, string Log) written, SensorSet set)
    {
        var (run, log) = written;
        var read = RunImporter.ReadTexts(run, set == SensorSet.Bare ? null : Encoding.UTF8.GetBytes(log));
        Assert.True(read.Record is not null, string.Join('\n', read.Problems));
        return read.Record with { Machine = Folder.Machine };
    }
}

/// <summary>Tests that share the runs, one after another.</summary>
[CollectionDefinition(Name)]
public sealed class BlindCollection : ICollectionFixture<BlindRuns>
{
    public const string Name = "runs of the blind machine";
}
