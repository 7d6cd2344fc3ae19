using Coldwright.Machine.Description;

namespace Coldwright.Simulation.Rating;

/// <summary>Which fluid models a rating uses.</summary>
public enum RatingModel
{
    /// <summary>The reference model alone.</summary>
    Reference,
    /// <summary>The cubic model alone.</summary>
    Cubic,
    /// <summary>The reference model, with the cubic as second opinion.</summary>
    Both,
}

/// <summary>How a rating is made.</summary>
public sealed record RatingOptions
{
    /// <summary>Model or models.</summary>
    public RatingModel Model { get; init; } = RatingModel.Both;
    /// <summary>Coldest load temperature of the cooling curve, K.</summary>
    public double ColdestK { get; init; } = 75;
    /// <summary>Step of the cooling curve, K.</summary>
    public double CurveStepK { get; init; } = 3;
    /// <summary>Node spacing of the enthalpy curves: largest error of a straight line between neighbours, K.</summary>
    public double CurveErrorK { get; init; } = 0.1;
    /// <summary>A load temperature at which the loop, the exergy and the balances are wanted instead of the default operating point, K.</summary>
    public double? OperatingTemperatureK { get; init; }
    /// <summary>Which pressures are held; null: what the file says, else both.</summary>
    public HeldPressure? Hold { get; init; }
    /// <summary>True: also the sensitivities of a closed loop and the bands that follow from them.</summary>
    public bool Sensitivity { get; init; }
}
