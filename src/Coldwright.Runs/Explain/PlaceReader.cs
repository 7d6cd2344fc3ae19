using Coldwright.Machine.Layout;
using Coldwright.Runs.Record;
using Coldwright.Runs.Sensors;

namespace Coldwright.Runs.Explain;

/// <summary>Which observable a sensor's place stands for.</summary>
internal static class PlaceReader
{
    /// <summary>The observable; null for places the model has no figure for.</summary>
    public static Observable? Of(RunChannel c, LoopLayout l)
    {
        string part = c.Place.Part, stream = c.Place.Port.Length > part.Length ? c.Place.Port[(part.Length + 1)..] : "";
        var end = c.Place.End;
        bool outlet = end == SensorEnd.Outlet;
        switch (c.Measured)
        {
            case Measured.Power: return part == Whereabouts.Machine ? Observable.Power : part == l.Compressor.Name ? Observable.CompressorPower : null;
            case Measured.MassFlow: return l.LoopPath.Any(p => p.Part.Name == part) ? Observable.MassFlow : null;
            case Measured.Pressure:
                if (part == l.Compressor.Name) return outlet ? Observable.HighPressure : end == SensorEnd.Inlet ? Observable.LowPressure : null;
                if (part == l.Recuperator.Name || part == l.WarmExchanger?.Name) return stream == "low" ? Observable.LowPressure : stream == "high" ? Observable.HighPressure : null;
                if (part == l.Aftercooler.Name || part == l.Precooler?.Name) return Observable.HighPressure;
                return part == l.Throttle.Name && end == SensorEnd.Inlet ? Observable.HighPressure : part == l.Throttle.Name && outlet || part == l.Coil.Name ? Observable.LowPressure : null;
            case Measured.Temperature:
                if (part == l.Vessel?.Name || part == l.Block?.Name) return Observable.Load;
                if (part == l.Coil.Name) return outlet ? Observable.CoilOutlet : end == SensorEnd.Surface ? Observable.Load : null;
                if (part == l.Throttle.Name) return end == SensorEnd.Inlet ? Observable.ThrottleInlet : null;
                if (part == l.Recuperator.Name && stream == "high") return outlet ? Observable.ThrottleInlet : end == SensorEnd.Inlet ? Observable.Precooled : null;
                if (part == l.Recuperator.Name && stream == "low") return outlet ? Observable.Return : end == SensorEnd.Inlet ? Observable.CoilOutlet : null;
                if (part == l.Precooler?.Name) return outlet ? Observable.Precooled : null;
                if (part == l.Compressor.Name) return outlet ? Observable.Discharge : null;
                return null;
            default: return null;
        }
    }
}
