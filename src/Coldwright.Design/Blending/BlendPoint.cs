using Coldwright.Quantities;

namespace Coldwright.Design.Blending;

/// <summary>What a mixture does, by one model. SI.</summary>
public sealed record BlendPoint
{
    /// <summary>Value of the goal: the larger the better; far below 0 where a limit is broken or there is no answer.</summary>
    public required double Merit { get; init; }
    /// <summary>Net cooling at the load temperature, W; not a number where there is no answer.</summary>
    public double CoolingW { get; init; } = double.NaN;
    /// <summary>Liquid collected in the flask, L/h at its normal boiling point; null where nothing is liquefied or it was not asked for.</summary>
    public double? CollectedLPerH { get; init; }
    /// <summary>Temperature without load, K; null where it was not asked for or is not reached.</summary>
    public double? NoLoadK { get; init; }
    /// <summary>Smallest isothermal enthalpy difference, J/mol.</summary>
    public double DifferenceJPerMol { get; init; } = double.NaN;
    /// <summary>Flow, mol/s.</summary>
    public double FlowMolPerS { get; init; }
    /// <summary>Mixture enters the recuperator at, K.</summary>
    public double InletK { get; init; }
    /// <summary>Heat that the precooler takes from the mixture, W.</summary>
    public double PrecoolingW { get; init; }
    /// <summary>Discharge, K; null where it was not worked out.</summary>
    public double? DischargeK { get; init; }
    /// <summary>Least freezing margin at the coldest place and whose; null: nothing can freeze there.</summary>
    public (string Gas, double Margin)? Freezing { get; init; }
    /// <summary>True with two liquids before the throttle; null where it was not looked at.</summary>
    public bool? TwoLiquids { get; init; }
    /// <summary>Limits broken, in words.</summary>
    public IReadOnlyList<Spoken> Broken { get; init; } = [];

    /// <summary>True when it keeps every limit and has an answer.</summary>
    public bool IsGood => Merit > Unusable;

    internal const double Unusable = -1e4;
    internal static BlendPoint Nothing { get; } = new() { Merit = 100 * Unusable };
}
