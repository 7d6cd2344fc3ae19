namespace Coldwright.Machine.Compression;

/// <summary>How a motor starts.</summary>
public enum StartingMotor
{
    /// <summary>Run capacitor only: most rotary room-cooler compressors.</summary>
    RunCapacitor,
    /// <summary>Start capacitor with relay.</summary>
    StartCapacitor,
    /// <summary>Resistance start with relay or PTC: small refrigerator compressors.</summary>
    ResistanceStart,
    /// <summary>Three-phase, or an inverter that ramps.</summary>
    ThreePhase,
}

/// <summary>Whether a compressor starts.</summary>
public enum StartingVerdict
{
    /// <summary>With margin.</summary>
    Starts,
    /// <summary>Within the uncertainty of the estimate.</summary>
    Doubtful,
    /// <summary>It does not.</summary>
    DoesNotStart,
}

/// <summary>Pressures at the moment of starting. SI, absolute.</summary>
/// <param name="SuctionPressurePa">Low side, Pa absolute; equal to the high side after a long standstill.</param>
/// <param name="DischargePressurePa">High side, Pa absolute.</param>
/// <param name="Motor">How the motor starts.</param>
/// <param name="LineVoltageShare">Voltage at the motor while it starts over its rating, 0.5..1.2; torque goes with its square.</param>
public sealed record StartingConditions(double SuctionPressurePa, double DischargePressurePa, StartingMotor Motor, double LineVoltageShare = 1);

/// <summary>What starting takes and what the motor has.</summary>
/// <param name="Verdict">The worse of the two questions.</param>
/// <param name="BreakawayTorqueNm">To turn over against the pressure difference and friction, N m.</param>
/// <param name="LockedRotorTorqueNm">What the motor has at rest, N m.</param>
/// <param name="PullUpTorqueNm">To run up while the suction side is still near its standstill pressure, N m.</param>
/// <param name="BreakdownTorqueNm">The most that the motor has at speed, N m.</param>
/// <param name="HighestDifferencePa">Pressure difference that it just starts against, Pa.</param>
/// <param name="HighestStandstillPressurePa">Suction pressure at starting from which it just runs up, Pa absolute.</param>
/// <param name="Reasons">In words, with what was assumed.</param>
public sealed record StartingResult(StartingVerdict Verdict, double BreakawayTorqueNm, double LockedRotorTorqueNm, double PullUpTorqueNm,
    double BreakdownTorqueNm, double HighestDifferencePa, double HighestStandstillPressurePa, IReadOnlyList<string> Reasons);

/// <summary>
/// Does the motor start against the standstill pressures? Two questions: the first turn against the pressure difference
/// with the torque at rest, and the run-up against dense gas with the breakdown torque. Estimates: our assumptions, no published
/// source; the verdict has a band of +-30 % in torque.
/// </summary>
public static class StartingCheck
{
    /// <summary>Torque ratios within which the verdict is "doubtful".</summary>
    public const double Band = 0.3;
    // pressure ratio reached while the suction side has hardly fallen
    private const double RunUpRatio = 2;
    private const double RunUpExponent = 1.2;

    /// <summary>The check.</summary>
    /// <param name="machine">The compressor.</param>
    /// <param name="conditions">Pressures, motor, voltage.</param>
    public static StartingResult Judge(CompressorMachine machine, StartingConditions conditions)
    {
        machine.Check();
        double low = InputCheck.Within(conditions.SuctionPressurePa, 1e3, 1e8, "Pa", nameof(conditions.SuctionPressurePa));
        double difference = InputCheck.Within(conditions.DischargePressurePa, low, 1e8, "Pa", nameof(conditions.DischargePressurePa)) - low;
        double voltage = InputCheck.Within(conditions.LineVoltageShare, 0.5, 1.2, "", nameof(conditions.LineVoltageShare));
        bool rotary = machine.Traits.Kind == CompressorKind.Rotary;
        double v = machine.DisplacementM3, friction = machine.Traits.LossScale * machine.Traits.FrictionPressurePa;
        // crank: force on the piston times half the stroke, dp V/2; rolling piston: about twice its mean torque dp V/(2 pi)
        double peak = rotary ? 1 / Math.PI : 0.5;
        // friction at rest is about twice that in motion, mean pressure V/(2 pi) each
        double atRest = 2 * friction * v / (2 * Math.PI);
        double breakaway = peak * difference * v + atRest;
        double rated = machine.MotorRatingW / (2 * Math.PI * machine.SynchronousSpeedRevPerS);
        var (locked, breakdown) = conditions.Motor switch
        {
            StartingMotor.RunCapacitor => (0.4, 2.0),
            StartingMotor.StartCapacitor => (2.5, 2.5),
            StartingMotor.ResistanceStart => (1.3, 2.0),
            _ => (2.0, 2.5),
        };
        double atStandstill = locked * rated * voltage * voltage, atSpeed = breakdown * rated * voltage * voltage;
        double k = RunUpExponent, perPascal = v / (2 * Math.PI) * k / (k - 1) * (Math.Pow(RunUpRatio, (k - 1) / k) - 1) * (1 + machine.Traits.FrictionShare);
        double pullUp = perPascal * low + friction * v / (2 * Math.PI);
        double worst = Math.Max(breakaway / atStandstill, pullUp / atSpeed);
        var verdict = worst < 1 - Band ? StartingVerdict.Starts : worst <= 1 + Band ? StartingVerdict.Doubtful : StartingVerdict.DoesNotStart;
        string motor = conditions.Motor switch
        {
            StartingMotor.RunCapacitor => "a motor with a run capacitor only",
            StartingMotor.StartCapacitor => "a motor with a start capacitor",
            StartingMotor.ResistanceStart => "a resistance-start motor",
            _ => "a three-phase or ramped motor",
        };
        return new StartingResult(verdict, breakaway, atStandstill, pullUp, atSpeed,
            Math.Max(0, (atStandstill - atRest) / (peak * v)), Math.Max(0, (atSpeed - friction * v / (2 * Math.PI)) / perPascal),
            [
                FormattableString.Invariant($"the first turn takes {breakaway:0.##} N m against {difference / 1e5:0.##} bar of difference; {motor} has {atStandstill:0.##} N m at rest ({locked:0.#} times its rated torque at {voltage:0.##} of its voltage)"),
                FormattableString.Invariant($"the run-up takes {pullUp:0.##} N m with the suction still at {low / 1e5:0.##} bar absolute and twice that ahead; the motor has {atSpeed:0.##} N m at most ({breakdown:0.#} times rated)"),
                FormattableString.Invariant($"rated torque {rated:0.##} N m is {(machine.RatedShaftPowerW is null ? "estimated from the displacement" : "from the rated shaft power")}; torque factors are our assumptions; within +-{100 * Band:0} % the verdict is doubtful"),
            ]);
    }
}
