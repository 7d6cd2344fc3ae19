using Coldwright.Fluids.EquationsOfState.PengRobinson;
using S = Coldwright.Blind.Physics.Sizes;

namespace Coldwright.Blind.Physics;

/// <summary>Pressures, flows and composition of the loop at one moment: compressor against capillary and buffer, and the charge finding room.</summary>
internal sealed class BlindLoop
{
    private const double FrictionW = 40;
    private readonly PengRobinsonModel _model;
    private readonly Truth _truth;
    private readonly double[] _charged;

    public BlindLoop(Truth truth, string[] names, double[] z)
    {
        (_model, _truth) = (ThirdPairs.Create(names), truth);
        double molarMass = 0;
        for (int i = 0; i < z.Length; i++) molarMass += z[i] * _model.Substances[i].MolarMass;
        double moles = S.ChargeKg / molarMass;
        _charged = [.. z.Select((x, i) => x * moles * truth.Charge[i])];
        _charged[0] *= 1 - truth.Of("light-gas-lost", 0);
        _charged[^1] *= 1 - truth.Of("heavy-held-up", 0);
        Moles = _charged.Sum();
        Table = new GasTable(_model, [.. _charged.Select(x => x / Moles)]);
        double a = 1e5, b = 40e5;
        for (int i = 0; i < 60; i++) if (WarmVolume * Table.Content(S.RoomK, 0.5 * (a + b)) < Moles) a = 0.5 * (a + b); else b = 0.5 * (a + b);
        RestPa = High = Low = a;
        BufferMoles = S.BufferM3 * Table.Content(S.RoomK, a);
        Low = 0.6 * a;
    }

    private double WarmVolume => S.BufferM3 + _truth.Volume * (S.WarmHighM3 + S.WarmLowM3 + S.ColdLinesM3 + S.CoilM3) + (S.HighAreaM2 + S.LowAreaM2) * S.LengthM;

    public GasTable Table { get; private set; }
    public double Moles { get; }
    public double RestPa { get; }
    public double High { get; private set; }
    public double Low { get; private set; }
    public double BufferMoles { get; private set; }
    /// <summary>Through the capillary, mol/s.</summary>
    public double Flow { get; private set; } = 0.01;
    public double CompressorFlow { get; private set; }
    public double DischargeK { get; private set; } = S.RoomK;
    public double CompressorW { get; private set; }
    public double CoilPa => 1.06 * Low;

    /// <summary>One step: pressures that suit temperatures along the loop.</summary>
    public void Step(double dt, double[] hotK, double[] coldK, double throttleK, double coilK, double suctionK, double block)
    {
        double at = High, flowAt = Capillary.MolarFlow(Table, throttleK, High, CoilPa, _truth.Friction) * block;
        double bufferPa = BufferPressure(), bleed = Bleed(bufferPa);
        double Throttle(double h) => flowAt * Math.Pow(h / at, 0.95);
        double Valve(double h) => h <= S.OpeningPa || h <= bufferPa ? 0 : Math.Min(1, (h - S.OpeningPa) / (S.FullyOpenPa - S.OpeningPa)) * 0.6 * S.ValveM2 * Math.Sqrt(2 * Table.MolarMass / Table.Volume(S.RoomK, h) * (h - bufferPa)) / Table.MolarMass;
        (double, double) Off(double lnH, double lnL)
        {
            double h = Math.Exp(lnH), l = Math.Exp(lnL), n = Compressed(suctionK, l, h);
            // what the valve lets through makes up for shortages of balance within the step
            return ((n - Throttle(h) - Valve(h)) / Math.Max(n, 1e-3), Loop(h, l, hotK, coldK, coilK) / (Moles - BufferMoles) - 1);
        }

        double x = Math.Log(High), y = Math.Log(Low);
        for (int i = 0; i < 6; i++)
        {
            const double d = 1e-4;
            var (f, g) = Off(x, y);
            var (fx, gx) = Off(x + d, y);
            var (fy, gy) = Off(x, y + d);
            double a = (fx - f) / d, b = (fy - f) / d, c = (gx - g) / d, e = (gy - g) / d, det = a * e - b * c;
            if (Math.Abs(det) < 1e-12) break;
            double dx = Math.Clamp((b * g - e * f) / det, -0.15, 0.15), dy = Math.Clamp((c * f - a * g) / det, -0.15, 0.15);
            x = Math.Clamp(x + dx, Math.Log(3e5), Math.Log(27e5));
            y = Math.Clamp(y + dy, Math.Log(0.4e5), Math.Min(Math.Log(14e5), x - 0.1));
            if (Math.Abs(dx) + Math.Abs(dy) < 1e-6) break;
        }
        (High, Low) = (Math.Exp(x), Math.Exp(y));
        Flow = Throttle(High);
        CompressorFlow = Compressed(suctionK, Low, High);
        BufferMoles = Math.Clamp(BufferMoles + dt * (Valve(High) - bleed), 0.02, Moles - 0.3);
        double ratio = (High + 0.15e5) / Low, inlet = suctionK + S.SuctionHeatingK, head = 8.314 * inlet / 0.155 * (Math.Pow(ratio, 0.155) - 1) * 0.97;
        // what slips past was compressed all the same
        CompressorW = (CompressorFlow + S.SlipMolPerSPa * (High - Low)) * head / (0.72 * 0.82 * _truth.Efficiency) + FrictionW;
        DischargeK = Math.Min(inlet + head / (0.62 * _truth.Efficiency) / 56, 420 + 0.1 * (inlet - 300));
    }

    // swept volume less clearance, less what slips past the roller: a sonic slit, so proportional to the high pressure
    private double Compressed(double suctionK, double low, double high)
    {
        double ratio = (high + 0.15e5) / low, swept = S.SweptM3PerS / Table.Volume(suctionK + S.SuctionHeatingK, low) * (0.97 - 0.015 * (Math.Pow(ratio, 0.84) - 1));
        return Math.Max(0.03 * swept, swept - S.SlipMolPerSPa * (high - low)) * _truth.Compressor * _truth.Of("compressor-flow", 1);
    }

    private double BufferPressure()
    {
        double a = 0.2e5, b = 26e5, density = BufferMoles / S.BufferM3;
        for (int i = 0; i < 40; i++) if (Table.Content(S.RoomK, 0.5 * (a + b)) < density) a = 0.5 * (a + b); else b = 0.5 * (a + b);
        return a;
    }

    private double Bleed(double bufferPa) => bufferPa <= Low ? 0
        : S.BleedM2 * Math.Sqrt(Table.MolarMass / Table.Volume(S.RoomK, bufferPa) * bufferPa * (1 - Low * Low / (bufferPa * bufferPa)) / (0.032 * S.BleedLengthM / S.BleedBoreM + 1.5)) / Table.MolarMass;

    private double Loop(double h, double l, double[] hotK, double[] coldK, double coilK)
    {
        double sum = _truth.Volume * (S.WarmHighM3 * Table.Content(S.RoomK, h) + S.WarmLowM3 * Table.Content(S.RoomK - 5, l) + (S.CoilM3 + 0.5 * S.ColdLinesM3) * Table.Content(coilK, l) + 0.5 * S.ColdLinesM3 * Table.Content(hotK[^1], h));
        double dv = S.LengthM / S.Cells;
        for (int i = 0; i < S.Cells; i++) sum += dv * (S.HighAreaM2 * Table.Content(hotK[i], h) + S.LowAreaM2 * Table.Content(coldK[i], l));
        return sum;
    }

    /// <summary>Brings the circulating composition in line with the charge; true when the tables were made anew.</summary>
    public bool Recompose(double[] hotK, double[] coldK, double coilK)
    {
        var held = new double[_charged.Length];
        double dv = S.LengthM / S.Cells;
        for (int i = 0; i < S.Cells; i++)
        {
            Table.Held(hotK[i], High, dv * S.HighAreaM2, held);
            Table.Held(coldK[i], Low, dv * S.LowAreaM2, held);
        }
        Table.Held(coilK, CoilPa, _truth.Volume * S.CoilM3, held);
        Table.Held(S.RoomK, High, _truth.Volume * S.WarmHighM3, held);
        Table.Held(S.RoomK, Low, _truth.Volume * S.WarmLowM3, held);
        double total = held.Sum() + BufferMoles, worst = 0;
        for (int i = 0; i < held.Length; i++) held[i] += BufferMoles * Table.Z[i];
        double[] z = [.. Table.Z];
        for (int i = 0; i < z.Length; i++)
        {
            double d = Math.Log(held[i] / total / (_charged[i] / Moles));
            worst = Math.Max(worst, Math.Abs(d));
            z[i] *= Math.Exp(-Math.Clamp(0.6 * d, -0.25, 0.25));
        }
        if (worst < 0.03) return false;
        double sum = z.Sum();
        Table = new GasTable(_model, [.. z.Select(v => v / sum)]);
        return true;
    }
}
