using Coldwright.Fluids.Substances;
using Coldwright.Safety;

namespace Coldwright.Design.Charging;

/// <summary>
/// In which order gases go in. A gas that does not burn comes first, to a little over the room's pressure, so that no air is drawn in and the last trace of it
/// is thinned before anything burns. Then the gases whose bottles have least pressure, for later they would not flow in any more; the rest of the first gas last.
/// </summary>
public static class FillingOrder
{
    // Our assumption: enough that every leak blows outwards and a gauge shows it.
    private const double CushionOverRoomPa = 2e4;

    /// <summary>Order and moles of each step.</summary>
    /// <param name="gas">Space and gases.</param>
    /// <param name="moles">What is wanted, mol of each.</param>
    /// <param name="roomPa">Room, Pa absolute.</param>
    public static IReadOnlyList<(int Gas, double Moles)> Of(RestingGas gas, IReadOnlyList<double> moles, double roomPa)
    {
        double Rank(int i) => gas.BottlePa(gas.Names[i]) is { } bottle ? bottle : 1e9 / SubstanceCatalog.Get(gas.Names[i]).CriticalTemperatureK * 1e3;
        int[] ranked = [.. Enumerable.Range(0, moles.Count).Where(i => moles[i] > 0).OrderBy(Rank)];
        bool burns = ranked.Any(i => FlammabilityLimits.Burns(gas.Names[i]));
        int inert = ranked.LastOrDefault(i => !FlammabilityLimits.Burns(gas.Names[i]) && gas.BottlePa(gas.Names[i]) is null && gas.Names[i] != "oxygen", -1);
        if (!burns || inert < 0 || ranked.Length < 2) return [.. ranked.Select(i => (i, moles[i]))];
        double[] none = new double[moles.Count], all = new double[moles.Count];
        all[inert] = moles[inert];
        double cushion = roomPa + CushionOverRoomPa;
        // so little of it that it does not reach the room's pressure: all of it goes in first
        double first = gas.At(all).PressurePa <= cushion ? moles[inert] : gas.MolesUntil(none, inert, cushion, moles[inert]), left = moles[inert] - first;
        var others = ranked.Where(i => i != inert).Select(i => (i, moles[i]));
        return [(inert, first), .. others, .. left > 1e-9 * moles[inert] ? [(inert, left)] : Array.Empty<(int, double)>()];
    }
}
