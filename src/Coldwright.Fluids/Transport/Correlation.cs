using Coldwright.Fluids.Transport.Terms;

namespace Coldwright.Fluids.Transport;

/// <summary>A published correlation of one property of one pure fluid: value = dilute(T) + dense(T, rho) + critical(T, rho).</summary>
internal sealed record Correlation
{
    public required string Name { get; init; }
    public required TransportMethod Method { get; init; }
    public required TransportTerm[] Dilute { get; init; }
    public required TransportTerm[] Dense { get; init; }
    public required TransportTerm[] Critical { get; init; }
    /// <summary>K; the range stated by its authors, else that of the equation of state.</summary>
    public required double MinimumTemperatureK { get; init; }
    /// <summary>K.</summary>
    public required double MaximumTemperatureK { get; init; }
    /// <summary>What is said outside that range.</summary>
    public required string RangeWarning { get; init; }

    public string? WarningAt(double temperatureK) =>
        temperatureK < MinimumTemperatureK * (1 - 1e-9) || temperatureK > MaximumTemperatureK * (1 + 1e-9) ? RangeWarning : null;
}
