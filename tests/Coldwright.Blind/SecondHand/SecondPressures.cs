using S = Coldwright.Blind.SecondHand.CoolerSizes;

namespace Coldwright.Blind.SecondHand;

/// <summary>Both pressures and the flow at one moment: the low one holds the gas that is in the loop, at each the high one makes compressor and capillary agree.</summary>
internal sealed class SecondPressures(Truth truth, SecondCharge charge)
{
    // 5 % of what the nameplate's refrigerant would bring: 1 g/s at 27 bar, 72.6 g/mol and 360 K (our assumption)
    private const double ThrottlePower = 0.8, FollowsS = 60, QuickS = 180, SlitM2 = 1.0e-3 / (0.62 * 27e5) * 203;

    private double _sinceS;

    public double HighPa { get; private set; }
    public double LowPa { get; private set; }
    /// <summary>Through the capillary, mol/s.</summary>
    public double Flow { get; private set; }
    public double CompressorFlow { get; private set; }
    public double DischargeK { get; private set; }
    public double CompressorW { get; private set; }
    /// <summary>At the coil.</summary>
    public double CoilPa => LowPa + DropPa(Flow);

    private static double DropPa(double flow) => S.ReturnDropPa * Math.Min(2, Math.Pow(flow / S.ReturnDropAtMolS, 1.75));

    /// <summary>One pressure everywhere.</summary>
    public double Rest(LoopZones zones, double roomK, bool withBuffer)
    {
        double a = 0.2e5, b = 28e5, moles = withBuffer ? charge.Moles : charge.LoopMoles;
        for (int i = 0; i < 40; i++)
        {
            double p = 0.5 * (a + b);
            if (zones.Moles(charge.Table, p, p) + (withBuffer ? S.BufferM3 * charge.Table.Content(roomK, p) : 0) < moles) a = p; else b = p;
        }
        return HighPa = LowPa = a;
    }

    /// <summary>A moment of the running loop.</summary>
    public void Run(double dt, LoopZones zones, double throttleK, double suctionK, double roomK, double opening)
    {
        var t = charge.Table;
        double at = Math.Clamp(HighPa, 3e5, 27e5), passed = SecondCapillary.Flow(t, throttleK, at, Math.Min(CoilPa, 0.9 * at), truth.Friction) * opening, bufferPa = BufferPa(roomK);
        double highest = Math.Max(bufferPa, S.OpeningPa);
        double Throttle(double high) => passed * Math.Pow(high / at, ThrottlePower);
        double Valve(double high) => high <= highest ? 0
            : Math.Min(1, (high - S.OpeningPa) / (S.FullyOpenPa - S.OpeningPa)) * 0.62 * S.ValveM2 * Math.Sqrt(2 * (high - bufferPa) * t.MolarMass / t.Volume(roomK, high)) / t.MolarMass;
        double High(double low)
        {
            double a = Math.Max(1.05 * low, 1.2e5), b = 27e5;
            for (int i = 0; i < 26; i++)
            {
                double h = 0.5 * (a + b);
                if (Swept(suctionK, low, h) > Throttle(h) + Valve(h)) a = h; else b = h;
            }
            return 0.5 * (a + b);
        }

        double x = 0.3e5, y = 14e5, moles = charge.LoopMoles;
        for (int i = 0; i < 26; i++)
        {
            double low = 0.5 * (x + y), high = High(low);
            if (zones.Moles(t, high, low + 0.5 * DropPa(Throttle(high))) < moles) x = low; else y = low;
        }
        // liquid has to boil off or to gather before the suction feels it; the first pull at the start is quick
        double goal = 0.5 * (x + y);
        LowPa = (_sinceS += dt) < QuickS ? goal : LowPa + (goal - LowPa) * dt / (dt + FollowsS);
        HighPa = High(LowPa);
        Flow = Throttle(HighPa);
        CompressorFlow = Swept(suctionK, LowPa, HighPa);
        charge.Exchange(dt * Bleed(bufferPa, LowPa, roomK), dt * Valve(HighPa));
        Work(suctionK);
    }

    /// <summary>The buffer while the compressor stands: its bleed goes on.</summary>
    public void Stand(double dt, double roomK)
    {
        charge.Exchange(dt * Bleed(BufferPa(roomK), LowPa, roomK), 0);
        (Flow, CompressorFlow, CompressorW) = (0, 0, 0);
        DischargeK += (roomK - DischargeK) * dt / 2400;
    }

    // clearance gas that expands again, and what slips past the roller: a sonic slit, so that a light gas slips more
    private double Swept(double suctionK, double low, double high)
    {
        double ratio = (high + S.AftercoolerDropPa) / low, share = 1 - S.Clearance * (Math.Pow(ratio, 1 / Kappa) - 1), inletK = suctionK + S.SuctionHeatingK, slip = Slip(high);
        double perMole = share * S.SweptM3S / charge.Table.Volume(inletK, low), back = Math.Min(0.5, slip / perMole);
        // what slipped past comes back hot, and half of that heat is still in the gas that is drawn in with it (our assumption)
        double swept = perMole / (1 + 0.5 * back * (Math.Pow(ratio, (Kappa - 1) / Kappa) - 1) / 0.75);
        return Math.Max(0.05 * swept, swept - slip) * truth.Compressor * truth.Of("compressor-flow", 1);
    }

    private double Slip(double high) => SlitM2 * 0.62 * high / Math.Sqrt(charge.Table.MolarMass * 8.314 * 360);

    private double Kappa => charge.Table.IdealCapacity / (charge.Table.IdealCapacity - 8.314);

    private void Work(double suctionK)
    {
        double ratio = (HighPa + S.AftercoolerDropPa) / LowPa, inletK = suctionK + S.SuctionHeatingK, exponent = (Kappa - 1) / Kappa;
        double ideal = 8.314 * inletK / exponent * (Math.Pow(ratio, exponent) - 1) * LowPa * charge.Table.Volume(inletK, LowPa) / (8.314 * inletK);
        double efficiency = Math.Clamp(0.60 - 0.0095 * (ratio - 2) - 0.0012 * (ratio - 2) * (ratio - 2), 0.25, 0.62) * truth.Efficiency, input = ideal / (efficiency * S.MotorEfficiency);
        // what slipped past is compressed again
        CompressorW = (CompressorFlow / truth.Of("compressor-flow", 1) + 0.6 * Slip(HighPa)) * input + 25;
        double gas = ideal + (input - ideal) * (1 - S.ShellShare);
        // the hotter it comes from the valve the more of it the shell takes (our assumption)
        double valveK = inletK + gas / (1.08 * charge.Table.IdealCapacity);
        DischargeK = valveK - 0.5 * Math.Max(0, valveK - 370);
    }

    private double BufferPa(double roomK)
    {
        double a = 0.1e5, b = 27e5, density = charge.BufferMoles / S.BufferM3;
        for (int i = 0; i < 34; i++) if (charge.Table.Content(roomK, 0.5 * (a + b)) < density) a = 0.5 * (a + b); else b = 0.5 * (a + b);
        return a;
    }

    // isothermal gas in a long narrow tube, friction factor 0.034 (our assumption for a drawn tube of 0.4 mm)
    private double Bleed(double bufferPa, double low, double roomK)
    {
        if (bufferPa <= low) return 0;
        double specific = 8.314 * roomK / charge.Table.MolarMass, flux = Math.Sqrt((bufferPa * bufferPa - low * low) / (specific * (0.034 * S.BleedLengthM / S.BleedBoreM + 1.5)));
        return flux * Math.PI / 4 * S.BleedBoreM * S.BleedBoreM / charge.Table.MolarMass;
    }
}
