using Coldwright.Machine.Charge;
using Coldwright.Quantities;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Tightness;

/// <summary>Carries a leak found with one gas at one pressure over to the machine's charge at standstill, for three ways of flowing through the leak.</summary>
internal static class ChargeLosses
{
    private const double YearS = 365.25 * 86400;

    public static IReadOnlyList<ChargeLoss> Of(RunRecord record, TightnessDescription test, GasDensity gas, double testPa, double testK, double leakMolS, double upperMolS, List<Spoken> warnings)
    {
        if (record.Machine is not { } machine) return [];
        var mixture = machine.Charge.Mixture;
        var charge = new GasDensity(mixture);
        if (machine.Operation.StandstillPressurePa is not { } standstill)
        {
            warnings.Add("the cooler's standstill pressure is not known, so the leak is not carried over to its charge");
            return [];
        }
        double room = record.RoomPressurePa, temperature = machine.Room.TemperatureK;
        if (charge.At(temperature, standstill) is not { } density || charge.HasCondensed)
        {
            warnings.Add("the charge is not all gas at its standstill pressure, so the leak is not carried over to it");
            return [];
        }
        if (testPa <= room * 1.01)
        {
            warnings.Add("the test's pressure is not above the room's, so the leak is not carried over to the charge");
            return [];
        }
        var amount = machine.Charge.MassKg is { } mass ? mass / charge.MolarMass : test.VolumeM3!.Value * density;
        var losses = new List<ChargeLoss>();
        // Molecular: every component by its partial pressure and 1/sqrt(M), at the same temperature scale.
        var pace = mixture.MoleFractions.Zip(charge.MolarMasses, (x, m) => x / Math.Sqrt(m)).Sum();
        var gasPace = test.Gas!.MoleFractions.Zip(gas.MolarMasses, (x, m) => x / Math.Sqrt(m)).Sum();
        Add("molecular", standstill * pace / (testPa * gasPace) * Math.Sqrt(testK / temperature), true);
        // Viscous through a fine channel: n proportional to (p^2 - p0^2)/(mu T) (Poiseuille for a gas).
        if (gas.Viscosity(testK, testPa) is { } muTest && charge.Viscosity(temperature, standstill) is { } mu && standstill > room)
            Add("viscous", (standstill * standstill - room * room) / (testPa * testPa - room * room) * muTest * testK / (mu * temperature), false);
        // Orifice, sonic: n proportional to p/sqrt(M T).
        if (standstill > 2 * room && testPa > 2 * room) Add("orifice", standstill / testPa * Math.Sqrt(gas.MolarMass * testK / (charge.MolarMass * temperature)), false);
        return losses;

        void Add(string flow, double factor, bool separates)
        {
            double l = leakMolS * factor, upper = upperMolS * factor;
            var lightest = Enumerable.Range(0, mixture.Names.Count).MinBy(i => charge.MolarMasses[i]);
            var relative = 1 / Math.Sqrt(charge.MolarMasses[lightest]) / pace;
            // What goes out by itself is lighter than what stays.
            var leaving = separates ? mixture.MoleFractions.Zip(charge.MolarMasses, (x, m) => x * Math.Sqrt(m)).Sum() / pace : charge.MolarMass;
            losses.Add(new(flow, l, upper, l * leaving * YearS, upper * leaving * YearS,
                l > 0 ? -Math.Log(0.9) * amount / l : null,
                upper > 0 ? -Math.Log(0.9) * amount / upper : null,
                separates ? ChargeShift.MolecularTime(mixture.MoleFractions, charge.MolarMasses, amount, l, test.ChargeShift) : null,
                separates ? ChargeShift.MolecularTime(mixture.MoleFractions, charge.MolarMasses, amount, upper, test.ChargeShift) : null,
                separates && mixture.Names.Count > 1 ? mixture.Names[lightest] : "", separates ? relative : 1));
        }
    }
}
