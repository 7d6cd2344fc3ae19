namespace Coldwright.Blind;

/// <summary>A generator of blind cases: who draws them, how their days go, and how they are written down.</summary>
public interface IBlindHand
{
    /// <summary>Latest moment at which a compressor is stopped, s after the start.</summary>
    double StopS { get; }
    /// <summary>Latest end of a record, s after the start.</summary>
    double EndS { get; }
    /// <summary>A case of the hand's seed.</summary>
    /// <param name="number">Number, from 0.</param>
    /// <param name="cancel">Stops the work.</param>
    BlindCase Make(int number, CancellationToken cancel = default);
    /// <summary>The same day with another machine.</summary>
    BlindCase Again(BlindCase like, Truth truth);
    /// <summary>What was written of it; the log is empty where all was noted by hand.</summary>
    /// <param name="c">The case.</param>
    /// <param name="set">What is measured.</param>
    /// <param name="day">Another day than 0 has the same sensors with the same errors, and noise of its own.</param>
    (string Run, string Log) Write(BlindCase c, SensorSet set, int day = 0);
    /// <summary>Chi-square between what two machines' sensors show without their errors, under the sensors' noise.</summary>
    double Distance(BlindCase a, BlindCase b, SensorSet set);
    /// <summary>Heat leak of the box with its content settled at a temperature, W.</summary>
    double SettledLeakW(Truth truth, double insideK);
    /// <summary>Factor on the conductivity of insulation with so much water by volume.</summary>
    double WetFactor(double share);
}
