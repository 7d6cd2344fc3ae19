using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;

namespace Coldwright.Simulation.Tests.ClosedLoop;

/// <summary>Sensible machines around the workshop's: every size scattered by a factor from 0.3 to 3, evenly in its logarithm.</summary>
internal static class RandomMachine
{
    public static MachineDescription Make(int seed)
    {
        var random = new Random(seed);
        double Factor(double least = 0.3, double most = 3) => least * Math.Pow(most / least, random.NextDouble());
        Tube Scaled(Tube t, double f) => t with { OutsideDiameterM = t.InsideDiameterM * f + 2 * t.WallM };
        var from = Workshop.Machine;
        double high = Factor(0.7, 1.5), low = Factor(0.7, 1.6);
        // the low tube must hold the high one
        MachineDescription m = Workshop.With<CompressorPart>(c => c with { DisplacementM3 = c.DisplacementM3 * Factor(), Nameplate = null, MaximumPressurePa = 6e6 }, from);
        m = Workshop.With<RecuperatorPart>(r =>
        {
            var inner = Scaled(r.HighTube!, high);
            var outer = Scaled(r.LowTube!, low);
            double least = inner.OutsideDiameterM * 1.25 + 2 * outer.WallM;
            return r with { LengthM = r.LengthM * Factor(), HighTube = inner, LowTube = outer.OutsideDiameterM < least ? outer with { OutsideDiameterM = least } : outer };
        }, m);
        m = Workshop.With<ThrottlePart>(t => t with { Capillary = t.Capillary! with { LengthM = t.Capillary.LengthM * Factor(), BoreM = t.Capillary.BoreM * Factor(0.7, 1.5) } }, m);
        m = Workshop.With<CoilPart>(c => c with { Turns = null, LengthM = c.LengthM * Factor(0.3, 1.5) }, m);
        m = Workshop.With<ColdBoxPart>(b => b with { WallM = b.WallM * Factor() }, m);
        m = Workshop.With<WarmExchangerPart>(w => w with { ConductanceWPerK = w.ConductanceWPerK * Factor() }, m);
        m = Workshop.With<PrecoolerPart>(p => p with
        {
            Loop = p.Loop! with
            {
                DisplacementM3 = p.Loop.DisplacementM3 * Factor(), EvaporatorConductanceWPerK = p.Loop.EvaporatorConductanceWPerK * Factor(), CondenserConductanceWPerK = p.Loop.CondenserConductanceWPerK * Factor(0.6, 3),
            },
        }, m);
        m = Workshop.With<BufferPart>(b => b with { VolumeM3 = b.VolumeM3 * Factor() }, m);
        double[] z = [.. from.Charge.Mixture.MoleFractions.Select(x => x * Factor(0.5, 2))];
        double sum = z.Sum();
        // a charge that stands at 8 to 22 bar when warm, whatever the sizes
        return m with
        {
            Name = $"random machine {seed}",
            Charge = m.Charge with { MassKg = null, Mixture = new Composition(from.Charge.Mixture.Names, [.. z.Select(x => x / sum)]) },
            Operation = m.Operation with { StandstillPressurePa = 8e5 + 14e5 * random.NextDouble() },
            Room = m.Room with { TemperatureK = 288 + 14 * random.NextDouble() },
        };
    }
}
