using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;

namespace Coldwright.Report.Tests.LoopDrawings;

/// <summary>Makes a machine that the solvers accept, from a seed: any optional part there or not, valves and reliefs anywhere, names of any length.</summary>
internal sealed class RandomMachine
{
    private readonly Random _random;
    private readonly List<Part> _parts = [];
    private readonly List<Line> _lines = [];
    private int _number;

    private RandomMachine(int seed) => _random = new(seed);

    public static Machines.Drawn Make(int seed)
    {
        var machine = new RandomMachine(seed).Build($"random {seed}");
        Assert.True(LoopLayout.TryFind(machine, out var layout, out var refusals), $"seed {seed}: {string.Join("; ", refusals.Select(r => r.Message))}");
        return new(machine.Name, machine, layout);
    }

    private MachineDescription Build(string name)
    {
        var compressor = Add(new CompressorPart { Name = Name("compressor"), Type = Maybe(0.5) ? CompressorType.Rotary : CompressorType.Reciprocating, MaximumDischargeTemperatureK = 400, Oil = Maybe(0.4) ? new() { SumpVolumeM3 = 1e-4, ReturnBoreM = 1e-3, ReturnLengthM = 1 } : null });
        var aftercooler = Add(new AftercoolerPart { Name = Name("aftercooler"), ApproachK = 5 });
        var warm = Maybe(0.6) ? Add(new WarmExchangerPart { Name = Name("warm-exchanger"), ConductanceWPerK = 20 }) : null;
        var precooler = Maybe(0.6) ? Add(new PrecoolerPart { Name = Name("precooler"), OutletTemperatureK = 240, EvaporatorDifferenceK = 5, CondenserDifferenceK = 10, CarnotShare = 0.4 }) : null;
        var recuperator = Add(new RecuperatorPart
        {
            Name = Name("recuperator"), LengthM = Maybe(0.8) ? 12.25 : null, CoilDiameterM = Maybe(0.5) ? 0.2 : null, Tubes = Maybe(0.3) ? 7 : 1,
            Arrangement = Maybe(0.3) ? null : (RecuperatorArrangement)_random.Next(3), HighSide = Maybe(0.5) ? HighSide.Inner : HighSide.Outer,
        });
        var throttle = Add(new ThrottlePart { Name = Name("throttle"), Capillary = Maybe(0.5) ? new() { BoreM = 8e-4, LengthM = 1.5 } : null, Valve = null });
        var hasVessel = Maybe(0.7);
        var coil = Add(new CoilPart { Name = Name("coil"), Place = hasVessel && Maybe(0.6) ? CoilPlace.Inside : Maybe(0.7) || !hasVessel ? CoilPlace.Around : null, LengthM = 3 });
        if (Maybe(0.8)) Add(new ColdBoxPart { Name = Name("cold-box"), Inside = (0.3, 0.3, 0.3), WallM = 0.15, Insulation = "polyurethane-foam" });
        var load = hasVessel ? Add<Part>(new VesselPart { Name = Name("vessel"), Tube = new("2-1/8 in type L", 0.054, 0.0018), LengthM = 0.3, Caps = Maybe(0.5) ? CapShape.Flat : null }) : Add(new BlockPart { Name = Name("block") });

        Join(compressor.Name, aftercooler.Name);
        var at = aftercooler.Name;
        if (warm is not null) at = Join(at, $"{warm.Name}.high");
        if (precooler is not null) at = Join(at, $"{precooler.Name}.high");
        Join(at, $"{recuperator.Name}.high");
        Join($"{recuperator.Name}.high", throttle.Name);
        Join(throttle.Name, coil.Name);
        Join(coil.Name, $"{recuperator.Name}.low");
        if (warm is null) Join($"{recuperator.Name}.low", compressor.Name);
        else
        {
            Join($"{recuperator.Name}.low", $"{warm.Name}.low");
            Join($"{warm.Name}.low", compressor.Name);
        }
        if (Maybe(0.5)) Buffer(Maybe(0.7) ? aftercooler.Name : compressor.Name, compressor.Name);
        if (hasVessel && Maybe(0.8)) Product(load, precooler);
        if (Maybe(0.1)) _lines.Add(new Line { From = Add(Valve()).Name, To = Add(Relief()).Name });
        return new()
        {
            Name = name, Parts = _parts, Lines = _lines,
            Room = new() { TemperatureK = 293, PressurePa = 101325, FloorAreaM2 = 30, HeightM = 2.5 },
            Charge = new() { Mixture = new Composition(["nitrogen", "methane"], [0.5, 0.5]) },
            Operation = new() { HighPressurePa = 18e5, LowPressurePa = 3e5 },
        };
    }

    private void Product(Part vessel, PrecoolerPart? precooler)
    {
        var feed = Add(new FeedPart { Name = Name("bottle"), Gas = "nitrogen", PressurePa = 17e5, SupplyPressurePa = Maybe(0.3) ? 1.1e5 : null });
        var at = feed.Name;
        if (precooler is not null && Maybe(0.6)) at = Join(at, $"{precooler.Name}.feed");
        Join(at, vessel.Name);
        if (Maybe(0.8)) Join(vessel.Name, Add(new FlaskPart { Name = Name("flask"), VolumeM3 = 2e-3 }).Name);
        else if (Maybe(0.5)) _lines.Add(Line(vessel.Name, Add(Valve()).Name));
    }

    private void Buffer(string from, string suction)
    {
        var buffer = Add(new BufferPart { Name = Name("buffer"), VolumeM3 = 0.01, OpeningPressurePa = 20e5, BleedBoreM = 4e-4 });
        var at = from;
        while (Maybe(0.3)) at = Through(at);
        _lines.Add(Line(at, buffer.Name));
        if (Maybe(0.3)) Branch(buffer.Name, 1);
        at = buffer.Name;
        while (Maybe(0.3)) at = Through(at);
        _lines.Add(Line(at, suction));
    }

    // A line with valves in it and branches on it; the result is its end.
    private string Join(string from, string to)
    {
        var at = from;
        while (Maybe(0.15)) at = Through(at);
        _lines.Add(Line(at, to));
        if (Maybe(0.2)) Branch(from, 0);
        if (Maybe(0.05)) Branch(from, 0);
        return to;
    }

    private string Through(string at)
    {
        var valve = Add(Valve());
        _lines.Add(Line(at, valve.Name));
        return valve.Name;
    }

    private void Branch(string port, int depth)
    {
        if (depth < 3 && Maybe(0.35))
        {
            var valve = Add(Valve());
            _lines.Add(Line(port, valve.Name));
            Branch(valve.Name, depth + 1);
            if (Maybe(0.3)) Branch(valve.Name, depth + 1);
        }
        else _lines.Add(Line(port, Add(Relief()).Name));
    }

    private Line Line(string from, string to) => new()
    {
        From = from, To = to, Place = Maybe(0.3) ? Place.ColdBox : Place.Room, LengthM = 0.5, Tube = Maybe(0.8) ? new("3/8 in ACR", 0.0095, 0.0008) : null,
    };

    private ValvePart Valve() => new() { Name = Name("valve") };

    private ReliefPart Relief() => new() { Name = Name("relief"), SetPressurePa = 25e5 };

    private T Add<T>(T part) where T : Part
    {
        _parts.Add(part);
        return part;
    }

    private string Name(string word) => _random.Next(6) switch
    {
        0 => $"{word[0]}{++_number}",
        1 => $"the-old-{word}-by-the-window-{++_number}",
        2 => $"{word.Replace("-", "", StringComparison.Ordinal)}withalongname{++_number}",
        _ => $"{word}-{++_number}",
    };

    private bool Maybe(double chance) => _random.NextDouble() < chance;
}
