using Coldwright.Machine.HeatTransfer;

namespace Coldwright.Machine.ColdVessel;

/// <summary>What the content does at a stretch of coil.</summary>
public enum CoilZone
{
    /// <summary>Above the level: gas condenses.</summary>
    Condensing,
    /// <summary>Below the level: liquid is cooled.</summary>
    Submerged,
    /// <summary>Above the critical pressure: a dense fluid is cooled.</summary>
    Dense,
}

/// <summary>Film coefficients between the content and the surface it meets.</summary>
internal sealed class OutsideTransfer
{
    private const double Gravity = 9.80665;

    // the film grows without limit as the surface nears the gas: held here, far below any difference that carries heat
    private const double LeastDifferenceK = 1e-9;

    // film properties at wall + 0.31 (saturation - wall): W. J. Minkowycz, E. M. Sparrow, Int. J. Heat Mass Transfer 9 (1966) 1125; from memory
    private const double FilmPlace = 0.31;

    // what the film's own cooling adds to the heat of condensation, in cp dT: in the film law, and as heat carried off by the drip (mean of a
    // linear temperature over a parabolic velocity): W. M. Rohsenow, Trans. ASME 78 (1956) 1645; from memory
    private const double FilmLawShare = 0.68, DripShare = 3.0 / 8;

    private readonly ColdVesselInput _in;
    private readonly VesselProduct _product;
    private readonly bool _around;
    private readonly double _condensingHeight, _submergedHeight, _gasDensity, _heat, _glideShare;

    public OutsideTransfer(ColdVesselInput input)
    {
        (_in, _product) = (input, input.Product);
        var coil = input.Coil;
        _around = coil.Position == CoilPosition.Around;
        double level = _product.IsDense ? coil.TopM : Math.Clamp(input.LevelM, coil.BottomM, coil.TopM);
        (_condensingHeight, _submergedHeight) = (coil.TopM - level, level - coil.BottomM);
        if (_product.IsDense) return;
        double dew = _product.DewK!.Value;
        var gas = _product.Gas(dew);
        _gasDensity = gas.Density;
        // the feed's heat above its dew point reaches the film with it
        _heat = (input.FeedK is { } feed ? _product.Gas(feed).MassEnthalpy : _product.BubbleEnthalpy + _product.HeatOfCondensation) - _product.BubbleEnthalpy;
        _glideShare = gas.HeatCapacity * _product.GlideK / _product.HeatOfCondensation;
    }

    /// <summary>Heat from the feed to the liquid at its bubble point, J/kg.</summary>
    public double HeatPerKg => _heat;

    /// <summary>Film coefficient, W/(m2 K).</summary>
    /// <param name="zone">Where.</param>
    /// <param name="heightM">Height of the tube's axis, m.</param>
    /// <param name="wallK">Surface, K.</param>
    /// <param name="liquidK">Liquid or dense fluid, K.</param>
    public double Film(CoilZone zone, double heightM, double wallK, double liquidK)
    {
        if (zone != CoilZone.Condensing) return Convection(wallK, liquidK, _submergedHeight, gas: false);
        if (_in.Options.Condensing.FixedFilm is { } given) return given;
        double difference = _product.BubbleK!.Value - wallK;
        // a surface warmer than the gas does not condense; what little passes goes by free convection
        if (difference < -LeastDifferenceK) return Convection(wallK, _product.DewK!.Value, _condensingHeight, gas: true);
        difference = Math.Max(difference, LeastDifferenceK);
        var liquid = _product.Liquid(wallK + FilmPlace * difference);
        double latent = _heat + FilmLawShare * liquid.HeatCapacity * difference;
        double film = _around
            ? FilmCondensation.VerticalPlate(liquid.Density, _gasDensity, liquid.Conductivity, liquid.Viscosity, latent, difference, _condensingHeight)
            : FilmCondensation.HorizontalTube(liquid.Density, _gasDensity, liquid.Conductivity, liquid.Viscosity, latent, difference, _in.Coil.OutsideDiameterM)
                * RowCorrection.OfRow((_in.Coil.TopM - heightM) / _in.Coil.PitchM + 0.5, _in.Options.Rows);
        if (_glideShare > 1e-6) film = MixtureCorrection.SilverBellGhaly(film, Convection(wallK, _product.DewK!.Value, _condensingHeight, gas: true), _glideShare);
        return film * _in.Options.Condensing.FilmScale;
    }

    /// <summary>Heat that a kilogram gives up between feed and drip at a surface, J/kg.</summary>
    /// <param name="wallK">Surface, K.</param>
    public double DripHeat(double wallK)
    {
        double difference = Math.Max(0, _product.BubbleK!.Value - wallK);
        return _heat + DripShare * _product.Liquid(wallK + FilmPlace * difference).HeatCapacity * difference;
    }

    // Ra = g (rho_wall - rho_bulk) rho cp L^3/(mu k): the densities themselves, since an expansion coefficient means little in a dense fluid
    private double Convection(double wallK, double bulkK, double heightM, bool gas)
    {
        if (!gas && _in.Options.Convection.FixedFilm is { } given) return given;
        ProductProperties wall = gas ? _product.Gas(wallK) : _product.Liquid(wallK), bulk = gas ? _product.Gas(bulkK) : _product.Liquid(bulkK);
        var mean = gas ? _product.Gas(0.5 * (wallK + bulkK)) : _product.Liquid(0.5 * (wallK + bulkK));
        double difference = bulkK - wallK;
        // over a wide or near-critical difference the mean heat capacity counts
        double cp = Math.Abs(difference) > 0.01 ? Math.Max((bulk.MassEnthalpy - wall.MassEnthalpy) / difference, 0.1 * mean.HeatCapacity) : mean.HeatCapacity;
        double length = _around ? Math.Max(heightM, 1e-4) : _in.Coil.OutsideDiameterM;
        double prandtl = cp * mean.Viscosity / mean.Conductivity;
        double rayleigh = Gravity * Math.Abs(wall.Density - bulk.Density) * mean.Density * cp * length * length * length / (mean.Viscosity * mean.Conductivity);
        double nusselt = _around ? FreeConvection.VerticalPlate(rayleigh, prandtl) : FreeConvection.HorizontalCylinder(rayleigh, prandtl);
        return nusselt * mean.Conductivity / length * _in.Options.Convection.FilmScale;
    }
}
