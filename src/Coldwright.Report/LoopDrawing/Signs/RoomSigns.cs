using Coldwright.Machine.Description;
using static Coldwright.Report.Loops.Signs.Sign;

namespace Coldwright.Report.Loops.Signs;

/// <summary>Signs of what stands in the room.</summary>
internal static class RoomSigns
{
    /// <summary>A shell compressor: a tall pot with its suction bottle at its side, or a squat pot with a seam. Discharge on top, suction at the right.</summary>
    public static Sign Compressor(CompressorType type) => type == CompressorType.Rotary
        ? new(62, 72, 22,
            Path("shell", "M52 34H40V58H52") + Path("shell", "M47 26Q52 18 57 26V62Q52 68 47 62Z")
            + Path("shell", "M4 16Q4 3 22 3T40 16V58Q40 68 22 68T4 58Z") + Path("detail", "M4 17H40M4 57H40M9 68L6 72M35 68L38 72")
            + Path("detail", "M14 30H30V40H14ZM18 35H18.1M22 35H22.1M26 35H26.1")) { OutletX = 57 }
        : new(62, 62, 26,
            Path("shell", "M4 30C4 -4 48 -4 48 30") + Path("shell", "M4 33C4 64 48 64 48 33") + Path("shell", "M0 29H52V34H0Z") + Path("shell", "M47 40H60V46H46Z")
            + Path("detail", "M12 53L8 61M40 53L44 61M18 40H32V48H18ZM22 44H22.1M25 44H25.1M28 44H28.1")) { OutletX = 60 };

    /// <summary>Height of the suction port below the sign's top.</summary>
    public static double SuctionY(CompressorType type) => type == CompressorType.Rotary ? 46 : 43;

    /// <summary>A small upright pot with a drop of oil in it.</summary>
    public static Sign OilSeparator() => new(24, 44, 12,
        Path("shell", "M2 12Q2 2 12 2T22 12V34Q22 42 12 42T2 34Z") + "<g class=\"leak\">" + Path("tube fine", "M12 13C8 19 7 21 7 24A5 5 0 0 0 17 24C17 21 16 19 12 13Z") + "</g>" + Path("detail", "M3 35Q12 31 21 35"));

    /// <summary>A finned block with the tube going through it to and fro, and a fan.</summary>
    public static Sign Aftercooler() => new(66, 52, 10,
        Path("shell", "M0 6H36V46H0Z") + Path("faint", "M4 6V46M8 6V46M12 6V46M16 6V46M20 6V46M24 6V46M28 6V46M32 6V46")
        + "<g class=\"high\">" + Path("tube", "M10 0V10Q10 13 13 13H28Q31.5 13 31.5 16.5T28 20H8Q4.5 20 4.5 23.5T8 27H28Q31.5 27 31.5 30.5T28 34H13Q10 34 10 37V52") + "</g>"
        + "<circle class=\"shell\" cx=\"52\" cy=\"26\" r=\"12.5\"/>" + Fan(52, 26, 10));

    /// <summary>A gas cylinder with its valve; the line leaves to the right of its neck.</summary>
    public static Sign Bottle() => new(30, 74, 30,
        Path("shell", "M4 70V28Q4 18 11 15V9H17V15Q24 18 24 28V70Q24 73 21 73H7Q4 73 4 70Z") + Path("shell", "M9 3H19V9H9Z") + Path("detail", "M19 6H30M14 3V0M9 0H19") + Path("faint", "M4 34H24M4 40H24"));

    /// <summary>A small pot standing in the feed line.</summary>
    public static Sign FeedCompressor() => new(30, 32, 15,
        Path("shell", "M3 14C3 -2 27 -2 27 14") + Path("shell", "M3 17C3 33 27 33 27 17") + Path("shell", "M0 13.5H30V17.5H0Z"));

    /// <summary>A tank with a spring-held valve on its neck and a hair-thin way out below.</summary>
    public static Sign Buffer() => new(46, 78, 23,
        Path("shell", "M17 2H29V14H17Z") + Path("detail", "M29 5L33 3L35 11L38 3L40 11L43 8M23 14V20")
        + Path("shell", "M5 30Q5 20 23 20T41 30V54Q41 64 23 64T5 54Z") + Path("faint", "M5 31H41M5 53H41") + Path("detail", "M23 64V66Q19 67.5 23 69T23 72T23 75V78"));

    /// <summary>A ball in a body, with its lever.</summary>
    public static Sign Valve() => new(30, 22, 11,
        Path("shell", "M2 4Q2 1 5 1H17Q20 1 20 4V18Q20 21 17 21H5Q2 21 2 18Z") + "<circle class=\"detail\" cx=\"11\" cy=\"11\" r=\"5.5\"/>" + Path("tube plain", "M11 11L28 3.5"));

    /// <summary>A body, a spring and a puff of gas.</summary>
    public static Sign Relief() => new(36, 22, 9,
        Path("shell", "M2 3H16V19H2Z") + Path("detail", "M5 6L13 8L5 11L13 14L5 16M19 5V17") + Path("detail", "M23 6.5L30 3M23 11H33M23 15.5L30 19"));

    /// <summary>A double-walled flask with liquid in it, open to the room.</summary>
    public static Sign Flask() => new(50, 62, 25,
        Path("shell", "M15 14V22Q4 27 4 38V50Q4 60 25 60T46 50V38Q46 27 35 22V14") + Path("liquid", "M9 42H41V49Q41 56 25 56T9 49Z")
        + Path("detail", "M18 14V24Q9 29 9 38V49Q9 56 25 56T41 49V38Q41 29 32 24V14") + Path("faint", "M13 10Q10 7 13 4M37 10Q40 7 37 4") + "<g class=\"cooling\">" + Path("tube fine", "M25 0V34") + "</g>");

    /// <summary>A fan's three blades.</summary>
    public static string Fan(double x, double y, double r)
    {
        var blade = $"M0 0C{N(-0.5 * r)} {N(-0.3 * r)} {N(-0.4 * r)} {N(-r)} 0 {N(-r)}C{N(0.35 * r)} {N(-r)} {N(0.2 * r)} {N(-0.4 * r)} 0 0Z";
        return string.Concat(new[] { 0, 120, 240 }.Select(turn => $"<path class=\"detail\" transform=\"translate({N(x)} {N(y)}) rotate({turn})\" d=\"{blade}\"/>")) + $"<circle class=\"solid\" cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"1.6\"/>";
    }
}
