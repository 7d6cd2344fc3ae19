using Coldwright.Machine.Description;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Which pressures are held, and what then follows from them.</summary>
internal sealed record LoopTarget(HeldPressure Held, HeldAnswer Answer, double HighPa, double LowPa, double AftercoolerDropPa)
{
    /// <summary>True when the amount of gas is an answer and no input.</summary>
    public bool ChargeIsFree => Held == HeldPressure.Both || (Held != HeldPressure.Neither && Answer == HeldAnswer.Charge);
    /// <summary>True when the throttle's size is an answer and no input.</summary>
    public bool ThrottleIsFree => Held == HeldPressure.Both || (Held != HeldPressure.Neither && Answer == HeldAnswer.Throttle);

    /// <summary>Puts each held pressure in the place of a balance that has no say then: that of flow when the throttle is free, that of the charge when the charge is.</summary>
    public void Hold(double[] f, double aftercooledPa, double suctionPa)
    {
        double high = Math.Log(aftercooledPa / HighPa), low = Math.Log(suctionPa / LowPa);
        switch (Held)
        {
            case HeldPressure.Both:
                (f[LoopBalances.Flow], f[LoopBalances.Charge]) = (high, low);
                break;
            case HeldPressure.High:
                f[ThrottleIsFree ? LoopBalances.Flow : LoopBalances.Charge] = high;
                break;
            case HeldPressure.Low:
                f[ThrottleIsFree ? LoopBalances.Flow : LoopBalances.Charge] = low;
                break;
        }
    }
}
