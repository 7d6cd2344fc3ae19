using Coldwright.Machine.Description;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files;

/// <summary>
/// Checks that need more than one value: pressures against the parts' own ratings, temperatures against the room.
/// A value that was already reported is NaN here and keeps silent, because every comparison with NaN is false.
/// </summary>
public static class MachineChecks
{
    /// <summary>Reports what contradicts itself.</summary>
    public static void Check(MachineDescription machine, ProblemList problems)
    {
        var feed = machine.PartsOf<FeedPart>().FirstOrDefault();
        foreach (var part in machine.Parts)
        {
            CheckRating(part, machine, feed, problems);
            CheckTemperatures(part, machine.Room, problems);
            CheckPlace(part, machine, problems);
        }
        if (feed is not null && feed.PressurePa < machine.Room.PressurePa)
            problems.Add(feed.FileLine, 1, $"part '{feed.Name}' holds the vessel at {QuantityText.Pressure(feed.PressurePa)}, below the room's {QuantityText.Pressure(machine.Room.PressurePa)}; nothing would flow to the flask");
    }

    /// <summary>The highest working pressure a part sees, Pa absolute, and its name; null when it holds none that is known.</summary>
    private static (double PressurePa, string Name)? Working(Part part, MachineDescription machine, FeedPart? feed) => part switch
    {
        CompressorPart or AftercoolerPart => (machine.Operation.HighPressurePa + machine.PartsOf<AftercoolerPart>().Sum(a => a.PressureDropPa), "the compressor's discharge pressure"),
        WarmExchangerPart or PrecoolerPart or RecuperatorPart or ThrottlePart => (machine.Operation.HighPressurePa, "the high pressure"),
        CoilPart => (machine.Operation.LowPressurePa, "the low pressure"),
        VesselPart or FeedPart when feed is not null => (feed.PressurePa, "the feed pressure"),
        // Until the buffer is let down it may stand at the highest pressure that ever filled it.
        BufferPart buffer => (Math.Max(machine.Operation.HighPressurePa, buffer.FullyOpenPressurePa ?? buffer.OpeningPressurePa), "the high side that fills it"),
        _ => null,
    };

    private static bool IsInLoop(Part part) => part is CompressorPart or AftercoolerPart or WarmExchangerPart or PrecoolerPart or RecuperatorPart or ThrottlePart or CoilPart or BufferPart;

    private static void CheckRating(Part part, MachineDescription machine, FeedPart? feed, ProblemList problems)
    {
        if (part.MaximumPressurePa is not { } limit || Working(part, machine, feed) is not { } working) return;
        if (working.PressurePa > limit)
            problems.Add(part.FileLine, 1, $"part '{part.Name}' is made for at most {QuantityText.Pressure(limit)}, but {working.Name} is {QuantityText.Pressure(working.PressurePa)}");
        else if (IsInLoop(part) && machine.Operation.StandstillPressurePa > limit)
            problems.Add(part.FileLine, 1, $"part '{part.Name}' is made for at most {QuantityText.Pressure(limit)}, but the loop's standstill pressure is {QuantityText.Pressure(machine.Operation.StandstillPressurePa.Value)}");
    }

    private static void CheckPlace(Part part, MachineDescription machine, ProblemList problems)
    {
        if (part is CoilPart { Place: CoilPlace.Inside } && machine.PartsOf<BlockPart>().FirstOrDefault() is { } block)
            problems.Add(part.FileLine, 1, $"part '{part.Name}' sits inside, but what it cools is the block '{block.Name}'; write place: around");
        if (part is BufferPart buffer && buffer.OpeningPressurePa <= machine.Operation.LowPressurePa)
            problems.Add(part.FileLine, 1, $"part '{part.Name}' opens at {QuantityText.Pressure(buffer.OpeningPressurePa)}, which is not above the low pressure, {QuantityText.Pressure(machine.Operation.LowPressurePa)}; it would never shut");
    }

    private static void CheckTemperatures(Part part, RoomDescription room, ProblemList problems)
    {
        if (part is PrecoolerPart precooler && precooler.OutletTemperatureK >= room.TemperatureK)
            problems.Add(part.FileLine, 1, $"part '{part.Name}' cools to {QuantityText.Temperature(precooler.OutletTemperatureK)}, which is not below the room's {QuantityText.Temperature(room.TemperatureK)}");
        if (part is CompressorPart compressor && compressor.MaximumDischargeTemperatureK <= room.TemperatureK)
            problems.Add(part.FileLine, 1, $"part '{part.Name}' allows a discharge of {QuantityText.Temperature(compressor.MaximumDischargeTemperatureK)}, which is not above the room's {QuantityText.Temperature(room.TemperatureK)}");
    }
}
