using S = Coldwright.Blind.SecondHand.CoolerSizes;

namespace Coldwright.Blind.SecondHand;

/// <summary>The vessel's content and what becomes of it: flash to the room's pressure, heat of the drain line, soaking of the flask's wall, what the valve lets past.</summary>
internal sealed class SecondBatch(Truth truth)
{
    private const double LineJ = 4000, FlaskJPerKg = 20000, FlaskLeastJ = 4000, FlaskLossKgS = 7e-6, FillK = 15, SealedPa = 2e5, RegulatorKgS = 4e-3, LeftShare = 0.03;
    private double _impure, _condensedKg, _gasKg;

    public double Kg { get; private set; }
    /// <summary>Taken from the bottle: what condensed and the gas over it.</summary>
    public double FedKg => _condensedKg + _gasKg;
    public double CollectedKg { get; private set; }
    public double VesselPa { get; private set; } = SealedPa;
    public bool IsFed => _condensedKg > 0;
    public double FlaskLossKgPerS => FlaskLossKgS * Math.Pow(truth.Of("flask-warm", 1), 0.7);
    public double JPerK(double k) => Kg * ArgonBottle.LiquidCapacity(k);

    /// <summary>Temperature at which feed gas condenses now, K; 0 when the vessel is full.</summary>
    public double CondensingK(double loadK)
    {
        if (Kg > S.BrimShare * S.VesselM3 * ArgonBottle.LiquidDensity(Math.Min(loadK, 130))) return 0;
        // what does not condense gathers over the liquid and takes its part of the pressure
        return ArgonBottle.Boiling(ArgonBottle.FeedPa * Math.Max(0.35, 1 - _impure));
    }

    /// <summary>Heat that a condensing film brought in makes liquid.</summary>
    public void Condense(double dt, double condensedW, double loadK, double precooledK)
    {
        double kg = Math.Min(dt * RegulatorKgS, dt * condensedW / (ArgonBottle.Fed(Math.Min(precooledK + FillK, 290)) - ArgonBottle.Liquid(loadK)));
        (Kg, _condensedKg) = (Kg + kg, _condensedKg + kg);
        // of the other gas that came with it nine tenths stay in the gas
        _impure = Math.Min(0.5, _impure + 0.9 * kg * truth.Of("feed-impure", 0) / GasKg(loadK));
    }

    private double GasKg(double loadK) => Math.Max(0.1 * S.VesselM3, S.VesselM3 - Kg / ArgonBottle.LiquidDensity(Math.Min(loadK, 130))) * ArgonBottle.FeedPa * 0.0399 / (8.314 * loadK * 0.75);

    /// <summary>A step with the fill valve open: the bottle holds the pressure, and the drain valve leaks all the same.</summary>
    public void UnderFeed(double dt, double loadK)
    {
        VesselPa = ArgonBottle.FeedPa;
        _gasKg = Math.Max(_gasKg, GasKg(loadK));
        Kg -= Math.Min(Kg, dt * truth.Of("valve-leak", 0));
    }

    /// <summary>A closed vessel: liquid and gas agree; an empty one follows its gas.</summary>
    public void Rest(double dt, double loadK, double roomK)
    {
        if (Kg > 1e-4)
        {
            VesselPa = ArgonBottle.Pressure(loadK) / Math.Max(0.6, 1 - 0.5 * _impure);
            Kg -= Math.Min(Kg, dt * truth.Of("valve-leak", 0));
        }
        else if (!IsFed) VesselPa = Math.Min(SealedPa * loadK / roomK, ArgonBottle.Pressure(loadK));
    }

    /// <summary>Lets the content down; the temperature at which the vessel is left, K.</summary>
    public double LetDown(double loadK, double loadJPerK)
    {
        double out_ = Kg * (1 - LeftShare), flashed = Math.Clamp(ArgonBottle.Liquid(loadK) / ArgonBottle.Latent(ArgonBottle.BoilingK), 0, 0.9), latent = ArgonBottle.Latent(ArgonBottle.BoilingK);
        double line = LineJ * truth.LineHeat * truth.Of("line-loss", 1), arrives = Math.Max(0, out_ * (1 - flashed) - line / latent);
        double soak = (FlaskLeastJ + FlaskJPerKg * arrives) * truth.FlaskHeat * truth.Of("flask-warm", 1);
        CollectedKg = Math.Max(0, arrives - soak / latent);
        // half of the content is let out before the pressure has fallen; the rest boils down to the room's pressure and cools the metal
        double cooled = Math.Min(loadK - ArgonBottle.BoilingK, 0.12 * Kg * latent / loadJPerK);
        (Kg, VesselPa) = (0, S.RoomPa);
        return loadK - Math.Max(0, cooled);
    }
}
