using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Materials.Solids;

namespace Coldwright.Runs.Explain;

/// <summary>The causes that act on the loop and its cold box, each as a change of the model, with the doubts that every machine file leaves.</summary>
public static class CauseCatalog
{
    // Ice in cells: density times specific heat near 230 K; the rise of conductivity per volume share of water: the middle of the foams' and wool's factors. Our assumptions.
    private const double IceJPerM3K = 917 * 1.75e3, MeanK = 230, UsualFoamJPerM3K = 45e3;

    /// <summary>Rise of the logarithm of an insulation's conductivity by the volume share of water.</summary>
    internal const double MoistureFactor = 5;

    /// <summary>What the model of a machine is asked for.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout.</param>
    public static IReadOnlyList<CauseModel> For(MachineDescription machine, LoopLayout layout)
    {
        var causes = new List<CauseModel>
        {
            new("leak", "more heat leaks into the box", (0.4, 1.0), 0.6, 0.12, "", Math.Exp, f => One("leak", Math.Exp(f))),
            new("exchanger", "the recuperator exchanges less", (0.4, 1.0), 0.6, 0.16, "", f => Math.Exp(-f), f => Two("high-film", "low-film", Math.Exp(-f))),
            new("compressor-flow", "the compressor delivers less", (0.12, 0.35), 0.3, 0.07, "", f => Math.Exp(-f), f => One("compressor-flow", Math.Exp(-f))) { IsStraight = true },
            new("capillary-blocked", "the throttle passes less", (0.2, 0.55), 0.35, 0.1, "", f => Math.Exp(-f), f => One("throttle-flow", Math.Exp(-f))),
            new("freeze-plug", "something freezes in the throttle", (0.3, 0.9), 0.6, 0, "", f => Math.Exp(-f), f => One("throttle-flow", Math.Exp(-f))) { FromShare = 0.6 },
            new("extra-metal", "more metal must be cooled", (0.5, 1.2), 0.8, 0.08, "", Math.Exp, f => One("load-mass", Math.Exp(f))) { IsStraight = true },
            new("recuperator-metal", "metal of the recuperator", (0.1, 0.2), 1, 0.06, "", Math.Exp, f => One("recuperator-metal", Math.Exp(f))) { OnlyDoubt = true },
            new("insulation-heat", "heat in the insulation", (0.3, 0.6), 1, 0.2, "", Math.Exp, f => One("insulation-heat", Math.Exp(f))) { OnlyDoubt = true },
        };
        if (layout.Coil is { Tube: not null, LengthM: not null }) causes.Add(new("coil", "the coil passes less heat", (1.4, 2.7), 1.8, 0.2, "", f => Math.Exp(-f), f => One("coil-film", Math.Exp(-f))));
        if (layout.ColdBox is { } box)
        {
            double foam = FoamJPerM3K(box);
            causes.Add(new("wet-insulation", "the insulation is wet", (0.03, 0.09), 0.05, 0, "volume share of water", f => f,
                f => new Dictionary<string, double> { ["leak"] = Math.Exp(MoistureFactor * f), ["insulation-heat"] = 1 + f * IceJPerM3K / foam }));
        }
        var z = machine.Charge.Mixture;
        if (z.Names.Count > 1)
        {
            var byBoiling = Enumerable.Range(0, z.Names.Count).OrderBy(i => SubstanceCatalog.Get(z.Names[i]).CriticalTemperatureK).ToArray();
            int light = byBoiling[0], heavy = byBoiling[^1];
            causes.Add(new("light-gas-lost", $"{z.Names[light]} has leaked out", (0.15, 0.4), 0.3, 0.05, "share of it lost", f => f, f => One("light-gas", Math.Max(0.02, 1 - f))) { IsStraight = true });
            causes.Add(new("heavy-held-up", $"{z.Names[heavy]} does not circulate", (0.3, 0.7), 0.4, 0.2, "share of it held back", f => f, _ => None, (m, f) => Without(m, heavy, f)));
        }
        if (layout.Precooler is { } precooler)
            causes.Add(new("precooler-weak", "the precooler is weak", (0.25, 0.7), 0.6, 0.15, "", f => Math.Exp(-f), precooler.Loop is null ? _ => None : f => One("precooler", Math.Exp(-0.3 * f)), (m, f) => Weaker(m, precooler, f)) { IsStraight = true });
        return causes;
    }

    private static IReadOnlyDictionary<string, double> None { get; } = new Dictionary<string, double>();
    private static Dictionary<string, double> One(string id, double value) => new() { [id] = value };
    private static Dictionary<string, double> Two(string a, string b, double value) => new() { [a] = value, [b] = value };

    private static double FoamJPerM3K(ColdBoxPart box)
    {
        string? name = box.GivenInsulation ?? (box.Layers.Count > 0 ? box.Layers[0].Material : null);
        return name is not null && SolidLibrary.Default.Find(name) is { Density: { } d, SpecificHeatCurve: not null } solid ? d.KgPerM3 * solid.SpecificHeat(MeanK).Value : UsualFoamJPerM3K;
    }

    private static MachineDescription Without(MachineDescription m, int index, double share)
    {
        var z = m.Charge.Mixture;
        double[] moles = [.. z.MoleFractions];
        double before = 0, after = 0;
        for (int i = 0; i < moles.Length; i++)
        {
            double mass = SubstanceCatalog.Get(z.Names[i]).MolarMass;
            before += moles[i] * mass;
            if (i == index) moles[i] *= Math.Max(0.02, 1 - share);
            after += moles[i] * mass;
        }
        double left = moles.Sum();
        return m with
        {
            Charge = m.Charge with { Mixture = new Composition(z.Names, moles), MassKg = m.Charge.MassKg * after / before },
            Operation = m.Charge.MassKg is null && m.Operation.StandstillPressurePa is { } rest ? m.Operation with { StandstillPressurePa = rest * left } : m.Operation,
        };
    }

    private static MachineDescription Weaker(MachineDescription m, PrecoolerPart part, double f)
    {
        const double kelvinPerStrength = 22;
        double scale = Math.Exp(-f);
        PrecoolerPart weak = part.Loop is { DisplacementM3: { } swept } loop ? part with { Loop = loop with { DisplacementM3 = swept * scale } }
            : part with { OutletTemperatureK = part.OutletTemperatureK + kelvinPerStrength * f };
        return m with { Parts = [.. m.Parts.Select(p => p.Name == part.Name ? weak : p)] };
    }
}
