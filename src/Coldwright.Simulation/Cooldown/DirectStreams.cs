using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Streams;

namespace Coldwright.Simulation.Cooldown;

/// <summary>Both sides of the loop with every property a flash of the model, beginning from the tables' answers. Not thread-safe.</summary>
internal sealed class DirectStreams
{
    private readonly DirectStates _high, _low;

    /// <param name="model">Fluid model.</param>
    /// <param name="aftercooledK">Behind the aftercooler, K.</param>
    /// <param name="roomK">K.</param>
    public DirectStreams(HelmholtzModel model, double aftercooledK, double roomK)
    {
        (AftercooledK, RoomK) = (aftercooledK, roomK);
        var transport = new TransportModel(model);
        (_high, _low) = (new DirectStates(model, transport), new DirectStates(model, transport));
    }

    /// <summary>Behind the aftercooler, K.</summary>
    public double AftercooledK { get; }
    /// <summary>K.</summary>
    public double RoomK { get; }
    /// <summary>Where the next evaluation begins, and afterwards what it found; high side, low side.</summary>
    public (DirectPass High, DirectPass Low) Pass { get; set; } = (new(), new());
    /// <summary>States found by following phases.</summary>
    public long Followed => _high.Followed + _low.Followed;
    /// <summary>States found with a certificate.</summary>
    public long Certified => _high.Certified + _low.Certified;
    /// <summary>Followed states that a certificate put elsewhere.</summary>
    public long Astray => _high.Astray + _low.Astray;

    /// <summary>Begins an evaluation.</summary>
    public (StreamTable High, StreamTable Low) Begin(StreamTable high, StreamTable low) => (_high.Begin(high, Pass.High), _low.Begin(low, Pass.Low));
}
