namespace Coldwright.Runs.Record;

/// <summary>What kind of run was recorded.</summary>
public enum RunKind
{
    /// <summary>The cooler ran.</summary>
    Run,
    /// <summary>Gas shut in, to see whether it stays.</summary>
    LeakTest,
    /// <summary>Pressure above the working pressure, to see whether the parts hold.</summary>
    ProofTest,
}
