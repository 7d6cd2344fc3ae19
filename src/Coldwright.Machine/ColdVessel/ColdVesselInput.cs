using Coldwright.Machine.Recuperation;

namespace Coldwright.Machine.ColdVessel;

/// <summary>A coil, its vessel, and what is in both. Immutable.</summary>
public sealed record ColdVesselInput
{
    /// <summary>The coil.</summary>
    public required ColdCoilGeometry Coil { get; init; }
    /// <summary>The vessel.</summary>
    public required VesselGeometry Vessel { get; init; }
    /// <summary>The mixture as it enters the coil.</summary>
    public required StreamInlet Mixture { get; init; }
    /// <summary>The content at its pressure.</summary>
    public required VesselProduct Product { get; init; }
    /// <summary>Height of the liquid above the lowest point inside, m, 0 to the vessel's height; not used above the critical pressure, where the content fills the vessel.</summary>
    public double LevelM { get; init; }
    /// <summary>Feed gas as it enters the vessel, K, from the dew point to the product table's warm end; null: at its dew point. Needed above the critical pressure.</summary>
    public double? FeedK { get; init; }
    /// <summary>
    /// Temperature of the liquid, K; null: the steady one, at which the liquid part of the coil takes from the arriving condensate what it gives to
    /// the mixture. Given, the liquid may be cooling down or warming up. Needed above the critical pressure (temperature of the dense fluid).
    /// </summary>
    public double? LiquidK { get; init; }
    /// <summary>How to solve.</summary>
    public ColdVesselOptions Options { get; init; } = new();

    /// <summary>Refuses values outside their ranges.</summary>
    /// <exception cref="ArgumentException">With name, value, limit and unit.</exception>
    public void Check()
    {
        Coil.Check();
        Vessel.Check();
        Coil.CheckFit(Vessel);
        Mixture.Check("mixture");
        Options.Check();
        VesselGuard.Within(LevelM, 0, Vessel.HeightM * (1 + 1e-12), "m", nameof(LevelM));
        double least = Product.DewK ?? Product.ColdestK;
        if (FeedK is { } feed) VesselGuard.Within(feed, least * (1 - 1e-9), Product.WarmestK * (1 + 1e-9), "K", nameof(FeedK));
        if (LiquidK is { } liquid) VesselGuard.Within(liquid, Product.ColdestK, (Product.BubbleK ?? Product.WarmestK) * (1 + 1e-9), "K", nameof(LiquidK));
        if (!Product.IsDense) return;
        if (FeedK is null) throw new ArgumentException("FeedK is not given; above the critical pressure the feed's temperature (K) must be", nameof(FeedK));
        if (LiquidK is null) throw new ArgumentException("LiquidK is not given; above the critical pressure the content's temperature (K) must be", nameof(LiquidK));
    }
}

/// <summary>How a coil in its vessel is solved.</summary>
public sealed record ColdVesselOptions
{
    /// <summary>Cells along the coil, 8 to 2000.</summary>
    public int Cells { get; init; } = 32;
    /// <summary>Row rule of the condensing turns.</summary>
    public RowRule Rows { get; init; } = RowRule.Kern;
    /// <summary>Film and friction in the tube.</summary>
    public SideOptions Inside { get; init; } = new();
    /// <summary>Condensing film; its friction scale is not used.</summary>
    public SideOptions Condensing { get; init; } = new();
    /// <summary>Free convection in liquid or dense fluid; its friction scale is not used.</summary>
    public SideOptions Convection { get; init; } = new();
    /// <summary>False: the pressure stays as it enters.</summary>
    public bool PressureDrop { get; init; } = true;
    /// <summary>True: further solves that carry the correlations' uncertainty to the result.</summary>
    public bool Band { get; init; } = true;

    internal void Check()
    {
        if (Cells is < 8 or > 2000) throw new ArgumentException($"number of cells must be 8 to 2000, got {Cells}");
        Inside.Check("mixture");
        Condensing.Check("condensing");
        Convection.Check("liquid");
    }
}
