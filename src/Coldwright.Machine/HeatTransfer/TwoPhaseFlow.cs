namespace Coldwright.Machine.HeatTransfer;

/// <summary>
/// What the in-tube condensation and boiling correlations ask of a flow. A property that a correlation does not name may be left
/// at <see cref="double.NaN"/>; a correlation that needs a missing one refuses by name.
/// </summary>
public readonly record struct TwoPhaseFlow
{
    /// <summary>Every property unknown.</summary>
    public TwoPhaseFlow()
    {
    }

    /// <summary>Whole flow per bore area, kg/(m2 s), above 0.</summary>
    public required double MassFlux { get; init; }

    /// <summary>Vapour mass fraction, 0 to 1.</summary>
    public required double Quality { get; init; }

    /// <summary>Bore, or hydraulic diameter, m.</summary>
    public required double DiameterM { get; init; }

    /// <summary>kg/m3; of two liquids, see <see cref="LiquidMixing"/>.</summary>
    public double LiquidDensity { get; init; } = double.NaN;

    /// <summary>kg/m3.</summary>
    public double VapourDensity { get; init; } = double.NaN;

    /// <summary>Pa s.</summary>
    public double LiquidViscosity { get; init; } = double.NaN;

    /// <summary>Pa s.</summary>
    public double VapourViscosity { get; init; } = double.NaN;

    /// <summary>W/(m K).</summary>
    public double LiquidConductivity { get; init; } = double.NaN;

    /// <summary>W/(m K).</summary>
    public double VapourConductivity { get; init; } = double.NaN;

    /// <summary>J/(kg K), at constant pressure and composition.</summary>
    public double LiquidHeatCapacity { get; init; } = double.NaN;

    /// <summary>J/(kg K), at constant pressure and composition.</summary>
    public double VapourHeatCapacity { get; init; } = double.NaN;

    /// <summary>J/kg; of a mixture, vapour enthalpy less liquid enthalpy at equilibrium.</summary>
    public double LatentHeat { get; init; } = double.NaN;

    /// <summary>N/m.</summary>
    public double SurfaceTension { get; init; } = double.NaN;

    /// <summary>Pressure over critical pressure; of a mixture, the mole-weighted mean of the components' critical pressures.</summary>
    public double ReducedPressure { get; init; } = double.NaN;

    /// <summary>kg/mol.</summary>
    public double MolarMass { get; init; } = double.NaN;

    /// <summary>Reynolds number of the whole flow as liquid, G D / muL.</summary>
    public double AllLiquidReynolds => MassFlux * DiameterM / LiquidViscosity;

    /// <summary>Reynolds number of the liquid flowing alone, G (1-x) D / muL.</summary>
    public double LiquidReynolds => AllLiquidReynolds * (1 - Quality);

    /// <summary>Reynolds number of the vapour flowing alone, G x D / muV.</summary>
    public double VapourReynolds => MassFlux * Quality * DiameterM / VapourViscosity;

    /// <summary>Prandtl number of the liquid.</summary>
    public double LiquidPrandtl => LiquidHeatCapacity * LiquidViscosity / LiquidConductivity;

    /// <summary>Prandtl number of the vapour.</summary>
    public double VapourPrandtl => VapourHeatCapacity * VapourViscosity / VapourConductivity;

    /// <summary>Lockhart-Martinelli parameter, both phases turbulent: Xtt = ((1-x)/x)^0.9 (rhoV/rhoL)^0.5 (muL/muV)^0.1.</summary>
    public double MartinelliParameter => Math.Pow((1 - Quality) / Quality, 0.9)
        * Math.Sqrt(VapourDensity / LiquidDensity) * Math.Pow(LiquidViscosity / VapourViscosity, 0.1);

    /// <summary>Throws unless flow, quality, bore and the liquid's four transport properties are usable.</summary>
    internal void RequireLiquid()
    {
        Flow.FlowGuard.Positive(MassFlux, nameof(MassFlux), "kg/(m2 s)");
        Flow.FlowGuard.Fraction(Quality, nameof(Quality));
        Flow.FlowGuard.Positive(DiameterM, nameof(DiameterM), "m");
        Flow.FlowGuard.Positive(LiquidViscosity, nameof(LiquidViscosity), "Pa s");
        Flow.FlowGuard.Positive(LiquidConductivity, nameof(LiquidConductivity), "W/(m K)");
        Flow.FlowGuard.Positive(LiquidHeatCapacity, nameof(LiquidHeatCapacity), "J/(kg K)");
    }

    /// <summary>Throws unless both densities are usable.</summary>
    internal void RequireDensities()
    {
        Flow.FlowGuard.Positive(LiquidDensity, nameof(LiquidDensity), "kg/m3");
        Flow.FlowGuard.Positive(VapourDensity, nameof(VapourDensity), "kg/m3");
    }

    /// <summary>Throws unless the reduced pressure lies between 0 and 1.</summary>
    internal void RequireReducedPressure()
    {
        if (!(ReducedPressure is > 0 and < 1))
        {
            throw new ArgumentException(
                $"ReducedPressure is {ReducedPressure}; it must lie between 0 and 1 (dimensionless)", nameof(ReducedPressure));
        }
    }
}
