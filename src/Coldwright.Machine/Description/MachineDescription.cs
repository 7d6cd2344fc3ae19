using Coldwright.Fluids.Substances;

namespace Coldwright.Machine.Description;

/// <summary>The cooler as built, read from <c>machine.yaml</c>: parts, the lines that join them, charge, room. Immutable, SI throughout, pressures absolute.</summary>
public sealed record MachineDescription
{
    /// <summary>The builder's name for the cooler.</summary>
    public required string Name { get; init; }
    /// <summary>The room it stands in.</summary>
    public required RoomDescription Room { get; init; }
    /// <summary>The gas mixture of the loop.</summary>
    public required ChargeDescription Charge { get; init; }
    /// <summary>The two pressures it runs at.</summary>
    public required OperationDescription Operation { get; init; }
    /// <summary>All parts in file order.</summary>
    public required IReadOnlyList<Part> Parts { get; init; }
    /// <summary>All lines in file order.</summary>
    public required IReadOnlyList<Line> Lines { get; init; }

    /// <summary>The parts of one kind, in file order.</summary>
    public IEnumerable<T> PartsOf<T>() where T : Part => Parts.OfType<T>();
}

/// <summary>Room air and size.</summary>
public sealed record RoomDescription
{
    /// <summary>Air temperature, K.</summary>
    public required double TemperatureK { get; init; }
    /// <summary>Barometric pressure, Pa; gauge readings are turned into absolute pressures with it.</summary>
    public required double PressurePa { get; init; }
    /// <summary>Floor area, m2.</summary>
    public required double FloorAreaM2 { get; init; }
    /// <summary>Ceiling height, m.</summary>
    public required double HeightM { get; init; }
    /// <summary>Fresh-air changes per hour, 1/h.</summary>
    public double AirChangesPerHour { get; init; }
    /// <summary>Room volume, m3.</summary>
    public double VolumeM3 => FloorAreaM2 * HeightM;
}

/// <summary>Loop charge.</summary>
public sealed record ChargeDescription
{
    /// <summary>Mole fractions of the circulating mixture.</summary>
    public required Composition Mixture { get; init; }
    /// <summary>Charged mass, kg; null when not weighed.</summary>
    public double? MassKg { get; init; }
}

/// <summary>Pressures held during the rating, absolute.</summary>
public sealed record OperationDescription
{
    /// <summary>High side before the recuperator, Pa absolute.</summary>
    public required double HighPressurePa { get; init; }
    /// <summary>Low side at the cold end and at the compressor's suction, Pa absolute.</summary>
    public required double LowPressurePa { get; init; }
}

/// <summary>Where a part or line stands.</summary>
public enum Place { Room, ColdBox }

/// <summary>A round tube: outside diameter and wall, m.</summary>
/// <param name="Text">As written in the file.</param>
/// <param name="OutsideDiameterM">Outside diameter, m.</param>
/// <param name="WallM">Nominal wall, m.</param>
public sealed record Tube(string Text, double OutsideDiameterM, double WallM)
{
    /// <summary>Inside diameter, m.</summary>
    public double InsideDiameterM => OutsideDiameterM - 2 * WallM;
    /// <summary>Metal cross-section, m2.</summary>
    public double MetalAreaM2 => Math.PI / 4 * (OutsideDiameterM * OutsideDiameterM - InsideDiameterM * InsideDiameterM);
    /// <summary>Bore cross-section, m2.</summary>
    public double BoreAreaM2 => Math.PI / 4 * InsideDiameterM * InsideDiameterM;
}

/// <summary>A pipe between two ports. A port is <c>part</c> or <c>part.stream</c> (streams of exchangers: <c>high</c>, <c>low</c>, <c>feed</c>).</summary>
public sealed record Line
{
    /// <summary>Upstream port.</summary>
    public required string From { get; init; }
    /// <summary>Downstream port.</summary>
    public required string To { get; init; }
    /// <summary>Tube; null when the two parts are joined directly.</summary>
    public Tube? Tube { get; init; }
    /// <summary>Length, m.</summary>
    public double LengthM { get; init; }
    /// <summary>In the room or in the cold box. A line between a part in the room and a part in the cold box crosses the insulation.</summary>
    public Place Place { get; init; }
    /// <summary>Line number in the file, from 1.</summary>
    public int FileLine { get; init; }
}

/// <summary>A named part of a known kind.</summary>
public abstract record Part
{
    /// <summary>Name given in the file.</summary>
    public required string Name { get; init; }
    /// <summary>Line number in the file, from 1.</summary>
    public int FileLine { get; init; }
    /// <summary>Allowed pressure stamped on the part or given by its maker, Pa absolute; null when not known (tubes are then rated by formula).</summary>
    public double? MaximumPressurePa { get; init; }
}

/// <summary>kind <c>compressor</c>: the loop's compressor.</summary>
public sealed record CompressorPart : Part
{
    /// <summary>rotary or reciprocating.</summary>
    public required CompressorType Type { get; init; }
    /// <summary>Swept volume per revolution, m3; null when the flow is given instead.</summary>
    public double? DisplacementM3 { get; init; }
    /// <summary>Shaft speed, rev/s.</summary>
    public double? SpeedRevPerS { get; init; }
    /// <summary>Molar flow, mol/s, when it was measured instead of the displacement.</summary>
    public double? FlowMolPerS { get; init; }
    /// <summary>Clearance volume over swept volume.</summary>
    public double ClearanceFraction { get; init; }
    /// <summary>Share of the ideal volume flow lost to leakage and throttling at the valves, per unit of pressure ratio above 1.</summary>
    public double LeakagePerRatio { get; init; }
    /// <summary>Heating of the gas between the suction port and the cylinder, K.</summary>
    public double SuctionHeatingK { get; init; }
    /// <summary>Isentropic power over shaft power, at pressure ratios (ascending); linear between, held outside.</summary>
    public required IReadOnlyList<(double Ratio, double Efficiency)> IsentropicEfficiency { get; init; }
    /// <summary>Shaft power over electrical power.</summary>
    public required double MotorEfficiency { get; init; }
    /// <summary>Share of the shaft and motor losses that leaves through the shell to the room instead of heating the gas, 0..1.</summary>
    public double ShellHeatFraction { get; init; }
    /// <summary>Highest allowed discharge temperature, K.</summary>
    public required double MaximumDischargeTemperatureK { get; init; }
}

/// <summary>Compressor construction.</summary>
public enum CompressorType { Rotary, Reciprocating }

/// <summary>kind <c>aftercooler</c>: cools the discharge to near room air.</summary>
public sealed record AftercoolerPart : Part
{
    /// <summary>Outlet temperature minus room air, K.</summary>
    public required double ApproachK { get; init; }
    /// <summary>Pressure drop, Pa.</summary>
    public double PressureDropPa { get; init; }
    /// <summary>Fan power, W electrical.</summary>
    public double FanPowerW { get; init; }
}

/// <summary>kind <c>warm-exchanger</c>: counterflow exchanger ahead of the precooler.</summary>
public sealed record WarmExchangerPart : Part
{
    /// <summary>Overall conductance UA, W/K.</summary>
    public required double ConductanceWPerK { get; init; }
}

/// <summary>kind <c>precooler</c>: second loop that takes the high-pressure stream to a given temperature.</summary>
public sealed record PrecoolerPart : Part
{
    /// <summary>Temperature at which the high-pressure stream leaves, K.</summary>
    public required double OutletTemperatureK { get; init; }
    /// <summary>Evaporating temperature below the outlet temperature by this, K.</summary>
    public required double EvaporatorDifferenceK { get; init; }
    /// <summary>Condensing temperature above room air by this, K.</summary>
    public required double CondenserDifferenceK { get; init; }
    /// <summary>Cooling over electrical input as a share of Carnot between the two, 0..1.</summary>
    public required double CarnotShare { get; init; }
    /// <summary>Cooling capacity available at that temperature, W; null when not known.</summary>
    public double? CapacityW { get; init; }
    /// <summary>Fan power, W electrical.</summary>
    public double FanPowerW { get; init; }
}

/// <summary>kind <c>recuperator</c>: the long counterflow exchanger.</summary>
public sealed record RecuperatorPart : Part
{
    /// <summary>Overall conductance UA, W/K.</summary>
    public required double ConductanceWPerK { get; init; }
    /// <summary>Tube that holds the high pressure; null when not described.</summary>
    public Tube? HighTube { get; init; }
    /// <summary>Tube that holds the low pressure.</summary>
    public Tube? LowTube { get; init; }
    /// <summary>Length, m.</summary>
    public double? LengthM { get; init; }
    /// <summary>Pressure drop of the low-pressure stream, Pa.</summary>
    public double LowSidePressureDropPa { get; init; }
}

/// <summary>kind <c>throttle</c>: capillary or valve, taken as isenthalpic.</summary>
public sealed record ThrottlePart : Part;

/// <summary>kind <c>coil</c>: the mixture's coil at or in the vessel, or around a block.</summary>
public sealed record CoilPart : Part
{
    /// <summary>Load (vessel content or block) warmer than the mixture leaving the coil by this, K.</summary>
    public required double DifferenceK { get; init; }
    /// <summary>Tube.</summary>
    public Tube? Tube { get; init; }
    /// <summary>Tube length, m.</summary>
    public double? LengthM { get; init; }
}

/// <summary>kind <c>vessel</c>: the cold pressure vessel in which the product condenses.</summary>
public sealed record VesselPart : Part
{
    /// <summary>Body tube.</summary>
    public required Tube Tube { get; init; }
    /// <summary>Inside length, m.</summary>
    public required double LengthM { get; init; }
    /// <summary>Inside volume, m3.</summary>
    public double VolumeM3 => Tube.BoreAreaM2 * LengthM;
}

/// <summary>kind <c>block</c>: a metal block cooled instead of a vessel.</summary>
public sealed record BlockPart : Part;

/// <summary>kind <c>cold-box</c>: the insulated box around everything cold.</summary>
public sealed record ColdBoxPart : Part
{
    /// <summary>Inside length, width, height, m.</summary>
    public required (double LengthM, double WidthM, double HeightM) Inside { get; init; }
    /// <summary>Insulation thickness, m.</summary>
    public required double WallM { get; init; }
    /// <summary>Insulation material (key of the materials data).</summary>
    public required string Insulation { get; init; }
    /// <summary>Wires and other metal through the wall: material, total cross-section (m2), length in the wall (m).</summary>
    public IReadOnlyList<(string Material, double AreaM2, double LengthM)> Penetrations { get; init; } = [];
}

/// <summary>kind <c>feed</c>: product gas supply at its pressure.</summary>
public sealed record FeedPart : Part
{
    /// <summary>nitrogen, argon, oxygen or methane.</summary>
    public required string Gas { get; init; }
    /// <summary>Pressure in the cold vessel, Pa absolute.</summary>
    public required double PressurePa { get; init; }
    /// <summary>Pressure before the feed compressor, Pa absolute; null when it comes from a cylinder at enough pressure (no work).</summary>
    public double? SupplyPressurePa { get; init; }
    /// <summary>Isentropic power of the feed compression over its electrical power.</summary>
    public double FeedCompressorEfficiency { get; init; } = 1;
}

/// <summary>kind <c>valve</c>: a shut-off; closes a volume when shut.</summary>
public sealed record ValvePart : Part;

/// <summary>kind <c>relief</c>: relief valve or burst disc.</summary>
public sealed record ReliefPart : Part
{
    /// <summary>Opening pressure, Pa absolute.</summary>
    public required double SetPressurePa { get; init; }
}

/// <summary>kind <c>flask</c>: the open flask that collects the liquid at room pressure.</summary>
public sealed record FlaskPart : Part
{
    /// <summary>Liquid volume, m3.</summary>
    public required double VolumeM3 { get; init; }
}

/// <summary>What is at hand and what it costs, read from <c>shop.yaml</c>.</summary>
public sealed record ShopDescription
{
    /// <summary>Currency sign or code used for every price.</summary>
    public required string Currency { get; init; }
    /// <summary>Electricity price per kWh.</summary>
    public required double ElectricityPerKWh { get; init; }
    /// <summary>Price per kg of each gas (canonical name).</summary>
    public required IReadOnlyDictionary<string, double> GasPerKg { get; init; }
    /// <summary>Purity as sold, 0..1, by canonical name; gases whose purity is not given are missing.</summary>
    public IReadOnlyDictionary<string, double> GasPurity { get; init; } = new Dictionary<string, double>();
    /// <summary>Share of the charge lost and replaced per 1000 h of running.</summary>
    public double ChargeLossPer1000H { get; init; }
    /// <summary>Price of a litre of bought liquid by substance.</summary>
    public IReadOnlyDictionary<string, double> BoughtLiquidPerL { get; init; } = new Dictionary<string, double>();
}
