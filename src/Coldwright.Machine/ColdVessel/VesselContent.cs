namespace Coldwright.Machine.ColdVessel;

/// <summary>What is in the vessel: liquid below the level, gas at its dew point above it.</summary>
/// <param name="LevelM">Height of the liquid above the lowest point inside, m; the vessel's height when it is full, also of a dense fluid.</param>
/// <param name="LiquidKg">Liquid (or dense fluid), kg.</param>
/// <param name="GasKg">Gas above it, kg.</param>
/// <param name="LiquidK">Temperature of the liquid, K.</param>
public sealed record VesselContent(double LevelM, double LiquidKg, double GasKg, double LiquidK)
{
    /// <summary>Both together, kg.</summary>
    public double MassKg => LiquidKg + GasKg;

    /// <summary>Content at a level.</summary>
    /// <param name="vessel">The vessel.</param>
    /// <param name="coil">Its coil, or null.</param>
    /// <param name="product">What is in it, at its pressure.</param>
    /// <param name="levelM">m, 0 to the vessel's height.</param>
    /// <param name="liquidK">K; null: at the bubble point. Needed above the critical pressure.</param>
    public static VesselContent AtLevel(VesselGeometry vessel, ColdCoilGeometry? coil, VesselProduct product, double levelM, double? liquidK = null)
    {
        VesselGuard.Within(levelM, 0, vessel.HeightM * (1 + 1e-12), "m", nameof(levelM));
        double t = Temperature(product, liquidK), all = vessel.VolumeBelow(vessel.HeightM, coil);
        if (product.IsDense) return new(vessel.HeightM, all * product.Liquid(t).Density, 0, t);
        double below = vessel.VolumeBelow(levelM, coil);
        return new(levelM, below * product.Liquid(t).Density, (all - below) * product.Gas(product.DewK!.Value).Density, t);
    }

    /// <summary>Content of a given mass.</summary>
    /// <param name="vessel">The vessel.</param>
    /// <param name="coil">Its coil, or null.</param>
    /// <param name="product">What is in it, at its pressure.</param>
    /// <param name="massKg">kg, from full of gas to full of liquid.</param>
    /// <param name="liquidK">K; null: at the bubble point.</param>
    /// <exception cref="ArgumentException">The mass does not fit at this pressure and temperature; a dense fluid has one mass only, use <see cref="AtLevel"/>.</exception>
    public static VesselContent OfMass(VesselGeometry vessel, ColdCoilGeometry? coil, VesselProduct product, double massKg, double? liquidK = null)
    {
        double t = Temperature(product, liquidK), all = vessel.VolumeBelow(vessel.HeightM, coil);
        if (product.IsDense) throw new ArgumentException(FormattableString.Invariant($"massKg is {massKg:R} kg; above the critical pressure the vessel holds {all * product.Liquid(t).Density:R} kg at this pressure and temperature"), nameof(massKg));
        double liquid = product.Liquid(t).Density, gas = product.Gas(product.DewK!.Value).Density;
        VesselGuard.Within(massKg, all * gas * (1 - 1e-12), all * liquid * (1 + 1e-12), "kg", nameof(massKg));
        double volume = Math.Clamp((massKg - all * gas) / (liquid - gas), 0, all);
        return new(vessel.LevelOf(volume, coil), volume * liquid, (all - volume) * gas, t);
    }

    private static double Temperature(VesselProduct product, double? liquidK)
    {
        if (liquidK is { } t) return VesselGuard.Within(t, product.ColdestK, product.IsDense ? product.WarmestK : product.BubbleK!.Value * (1 + 1e-12), "K", nameof(liquidK));
        return product.BubbleK ?? throw new ArgumentException("liquidK is not given; above the critical pressure the content's temperature (K) must be", nameof(liquidK));
    }
}
