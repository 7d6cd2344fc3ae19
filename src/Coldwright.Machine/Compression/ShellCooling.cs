namespace Coldwright.Machine.Compression;

/// <summary>
/// What the shell gives to the room: free convection and radiation in still air, or a fan's air across it, or a conductance
/// that was measured. Own input record, SI.
/// </summary>
public sealed record ShellCooling
{
    private const double StefanBoltzmann = 5.670374419e-8;

    /// <summary>Outside area, m2, 0.005..5; null: from the displacement by <see cref="CompressorTraits.ShellAreaFactor"/>.</summary>
    public double? AreaM2 { get; init; }
    /// <summary>Height of the shell, m, 0.03..2; null: that of a cylinder twice as high as wide with the area.</summary>
    public double? HeightM { get; init; }
    /// <summary>Air speed across the shell, m/s, 0..20; 0 is still air.</summary>
    public double FanAirSpeedMPerS { get; init; }
    /// <summary>Emissivity, 0..1; black paint 0.9 (our assumption).</summary>
    public double Emissivity { get; init; } = 0.9;
    /// <summary>Conductance to the room that replaces all of this, W/K, 0..1000 (a water jacket, a measured cool-down); null: estimated.</summary>
    public double? ConductanceWPerK { get; init; }

    internal void Check()
    {
        InputCheck.Optional(AreaM2, 0.005, 5, "m2", nameof(AreaM2));
        InputCheck.Optional(HeightM, 0.03, 2, "m", nameof(HeightM));
        InputCheck.Within(FanAirSpeedMPerS, 0, 20, "m/s", nameof(FanAirSpeedMPerS));
        InputCheck.Within(Emissivity, 0, 1, "", nameof(Emissivity));
        InputCheck.Optional(ConductanceWPerK, 0, 1000, "W/K", nameof(ConductanceWPerK));
    }

    /// <summary>Heat from the shell to the room, W (negative when the shell is the colder).</summary>
    /// <param name="shellTemperatureK">K.</param>
    /// <param name="roomTemperatureK">Air and walls, K.</param>
    /// <param name="estimatedAreaM2">Area used when none is given, m2.</param>
    public double HeatToRoom(double shellTemperatureK, double roomTemperatureK, double estimatedAreaM2)
    {
        double difference = shellTemperatureK - roomTemperatureK;
        if (ConductanceWPerK is { } given) return given * difference;
        double area = AreaM2 ?? estimatedAreaM2;
        // side and both ends of a cylinder with height 2 d: 2.5 pi d^2
        double diameter = Math.Sqrt(area / (2.5 * Math.PI)), height = HeightM ?? 2 * diameter;
        double film = FreeConvection(Math.Abs(difference), height);
        // whichever is the stronger: a fan that barely turns does not stop free convection
        if (FanAirSpeedMPerS > 0)
            film = Math.Max(film, CrossFlow(FanAirSpeedMPerS, diameter, 0.5 * (shellTemperatureK + roomTemperatureK)));
        double radiation = Emissivity * StefanBoltzmann * (Math.Pow(shellTemperatureK, 4) - Math.Pow(roomTemperatureK, 4));
        return area * (film * difference + radiation);
    }

    /// <summary>
    /// Free convection of room air at an upright wall or cylinder, W/(m2 K): 1.42 (dT/H)^0.25. Simplified equation for air near
    /// 1 bar, laminar (W. H. McAdams, Heat Transmission, 1954, chapter 7; as given in J. P. Holman, Heat Transfer; from memory).
    /// About +-20 %.
    /// </summary>
    /// <param name="differenceK">Wall minus air, K, 0 or more.</param>
    /// <param name="heightM">m.</param>
    public static double FreeConvection(double differenceK, double heightM) => 1.42 * Math.Sqrt(Math.Sqrt(differenceK / heightM));

    /// <summary>
    /// Air at 1 bar across a cylinder, W/(m2 K), from <see cref="CrossFlowNusselt"/> with air as power laws
    /// (k = 0.0263 (T/300)^0.82, nu = 15.89e-6 (T/300)^1.72, Pr 0.705; our fit through table values from memory, 2 % from 250 to 450 K).
    /// </summary>
    /// <param name="airSpeedMPerS">m/s.</param>
    /// <param name="diameterM">m.</param>
    /// <param name="filmTemperatureK">Mean of wall and air, K.</param>
    public static double CrossFlow(double airSpeedMPerS, double diameterM, double filmTemperatureK)
    {
        double t = filmTemperatureK / 300, viscosity = 15.89e-6 * Math.Pow(t, 1.72), conductivity = 0.0263 * Math.Pow(t, 0.82);
        return conductivity / diameterM * CrossFlowNusselt(airSpeedMPerS * diameterM / viscosity, 0.705);
    }

    /// <summary>
    /// Nusselt number of a cylinder in cross flow, all Re Pr above 0.2: 0.3 + 0.62 Re^(1/2) Pr^(1/3) / (1 + (0.4/Pr)^(2/3))^(1/4)
    /// (1 + (Re/282000)^(5/8))^(4/5). S. W. Churchill, M. Bernstein, J. Heat Transfer 99 (1977) 300; about +-20 % (from memory).
    /// </summary>
    /// <param name="reynolds">On the diameter.</param>
    /// <param name="prandtl">Of the air.</param>
    public static double CrossFlowNusselt(double reynolds, double prandtl) =>
        0.3 + 0.62 * Math.Sqrt(reynolds) * Math.Cbrt(prandtl) / Math.Pow(1 + Math.Pow(0.4 / prandtl, 2.0 / 3), 0.25)
            * Math.Pow(1 + Math.Pow(reynolds / 282000, 0.625), 0.8);
}
