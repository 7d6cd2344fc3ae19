using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Description;

namespace Coldwright.Simulation.Parts;

/// <summary>The coil of the machine file as a helix in or around its vessel, with what had to be assumed about its pitch.</summary>
internal static class CoilShape
{
    private const double UsedHeight = 0.9;

    /// <summary>The helix, in the middle of the vessel's height.</summary>
    /// <exception cref="ArgumentException">So many turns need more tube than there is.</exception>
    public static (ColdCoilGeometry Coil, IReadOnlyList<string> Said) Of(CoilPart p, VesselGeometry vessel)
    {
        var (tube, length) = (p.Tube!, p.LengthM!.Value);
        double diameter = p.CoilDiameterM ?? vessel.OutsideDiameterM + tube.OutsideDiameterM, room = UsedHeight * vessel.HeightM;
        var said = new List<string>();
        double pitch;
        if (p.Turns is { } turns)
        {
            pitch = ColdCoilGeometry.PitchFromTurns(length, diameter, turns);
            if (turns * pitch > room)
            {
                // the pitch hangs on a small difference of large lengths: a little straight tube at the ends explains it
                pitch = room / turns;
                double turn = Math.PI * diameter, wound = turns * Math.Sqrt(turn * turn + pitch * pitch);
                said.Add(FormattableString.Invariant($"{turns:0.#} turns of all {length:0.##} m of tube would be higher than the vessel: the coil is taken as {1e3 * room:0} mm high and {length - wound:0.##} m of tube as straight ends, which are left out"));
                length = wound;
            }
        }
        else
        {
            // close-wound tube can be lower than the room there is
            pitch = Math.Max(tube.OutsideDiameterM, ColdCoilGeometry.PitchFromHeight(length, diameter, Math.Min(room, UsedHeight * length)));
            said.Add(FormattableString.Invariant($"the number of turns is not given: the coil is taken as spread over {1e3 * Math.Min(room, UsedHeight * length):0} mm of height; add 'turns' to {p.Name} (turns: 27)"));
        }
        var coil = new ColdCoilGeometry
        {
            OutsideDiameterM = tube.OutsideDiameterM, WallM = tube.WallM, LengthM = length, CoilDiameterM = diameter, PitchM = pitch,
            Position = p.Place == CoilPlace.Around ? CoilPosition.Around : CoilPosition.Inside,
        };
        return (coil with { BottomM = Math.Max(0, 0.5 * (vessel.HeightM - coil.HeightM)) }, said);
    }
}
