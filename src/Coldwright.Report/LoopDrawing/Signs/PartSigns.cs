using Coldwright.Machine.Description;

namespace Coldwright.Report.Loops.Signs;

/// <summary>The sign of a part that may hang on a branch.</summary>
internal static class PartSigns
{
    public static Sign OnBranch(Part part) => part switch
    {
        ReliefPart => RoomSigns.Relief(),
        BufferPart => RoomSigns.Buffer(),
        _ => RoomSigns.Valve(),
    };
}
