using Coldwright.Machine.Streams;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// What circulates at one moment: properties of both sides at its composition, which is part of the solution. The tables follow it along their slopes
/// and are overwritten when it moves. Not thread-safe.
/// </summary>
internal sealed class Circulating
{
    private readonly LoopMap _map;
    private readonly DirectStreams? _direct;
    private readonly double[] _step;
    private (double C0, double C1, double C2) _aftercooled, _roomWarm;

    /// <param name="map">Tables and maps about the composition.</param>
    /// <param name="direct">Answers by flashes of the model; null: by the tables.</param>
    public Circulating(LoopMap map, DirectStreams? direct = null)
    {
        (_map, _direct) = (map, direct);
        _step = new double[map.Middle.Length];
        (High, Low, Z, _aftercooled, _roomWarm) = (map.Tables.High, map.Tables.Low, map.Tables.Z, map.Aftercooled, map.RoomWarm);
    }

    public StreamTable High { get; private set; }
    public StreamTable Low { get; private set; }
    /// <summary>Mole fractions.</summary>
    public IReadOnlyList<double> Z { get; private set; }

    /// <summary>What the parts' models give over their maps at a discharge and a suction pressure (Pa).</summary>
    public LoopOffsets Offsets(double dischargePa, double suctionPa) => _map.OffsetsAt(_step, dischargePa, suctionPa);

    /// <summary>The buffer's bypass flow and content (mol/s, mol) with what circulates in it: its own are those of the composition in the middle.</summary>
    public (double Bypass, double Content) InBuffer(double bypass, double content, double bufferPa)
    {
        double ln = 0;
        for (int i = 0; i < _map.BufferSlopes.Length; i++) ln += bufferPa * _map.BufferSlopes[i] * _step[i];
        // through an opening the molar flow of a gas goes with the root of its density over its molar mass
        return (bypass * Math.Sqrt(Math.Exp(ln) * _map.Tables.High.MolarMass / High.MolarMass), content * Math.Exp(ln));
    }

    /// <summary>Goes to a composition, ln(z_i/z_1) from the second substance on; stays where the map holds it.</summary>
    public void Take(ReadOnlySpan<double> xi)
    {
        if (!_map.IsHeld)
        {
            for (int i = 0; i < xi.Length; i++) _step[i] = xi[i] - _map.Middle[i];
            var (high, low) = _map.Movers!.Value;
            (High, Low) = (high.At(_step), low.At(_step));
            Z = High.Composition;
            _map.Passages.MoveTo(_step);
            (_aftercooled, _roomWarm) = (LoopMap.Moved(_map.Aftercooled, _map.AftercooledSlopes, _step), LoopMap.Moved(_map.RoomWarm, _map.RoomWarmSlopes, _step));
        }
        else (High, Low) = (_map.Tables.High, _map.Tables.Low);
        if (_direct is not null) (High, Low) = _direct.Begin(High, Low);
    }

    /// <summary>At the aftercooler's outlet, J/mol.</summary>
    public double AftercooledEnthalpy(double pressurePa) => _direct is not null ? High.Enthalpy(_direct.AftercooledK, pressurePa) : Along(_aftercooled, Math.Log(pressurePa) - _map.LnHigh);
    /// <summary>Of suction gas at the room's temperature, J/mol.</summary>
    public double RoomWarmEnthalpy(double pressurePa) => _direct is not null ? Low.Enthalpy(_direct.RoomK, pressurePa) : Along(_roomWarm, Math.Log(pressurePa) - _map.LnLow);

    private static double Along((double C0, double C1, double C2) c, double x) => c.C0 + x * (c.C1 + x * c.C2);
}
