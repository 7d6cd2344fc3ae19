using Coldwright.Machine.Description;

namespace Coldwright.Machine.Files.Parts;

/// <summary>Makes a precooler and its loop.</summary>
internal static class PrecoolerReader
{
    /// <summary>The precooler.</summary>
    public static PrecoolerPart Read(SectionReader r, string name) => new()
    {
        Name = name,
        OutletTemperatureK = r.Quantity("outlet-temperature"),
        EvaporatorDifferenceK = r.Quantity("evaporator-difference"),
        CondenserDifferenceK = r.Quantity("condenser-difference"),
        CarnotShare = r.Quantity("carnot-share"),
        CapacityW = r.OptionalQuantity("capacity"),
        FanPowerW = r.Quantity("fan-power", 0),
        GasVolumeM3 = r.OptionalQuantity("gas-volume"),
        Loop = Loop(r, name),
    };

    private static PrecoolerLoopDescription? Loop(SectionReader owner, string name)
    {
        if (owner.Section("loop", $"the loop of part '{name}'") is not { } r) return null;
        r.OnlyOneOf("superheat", "capillary", "valve");
        r.OnlyOneOf("shell-conductance", "shell-cooling");
        return new PrecoolerLoopDescription
        {
            Refrigerant = r.Refrigerant("refrigerant"),
            Type = CompressorReader.Type(r),
            Nameplate = CompressorReader.Nameplate(r, $"the nameplate of the loop of part '{name}'"),
            RatingSheet = CompressorReader.RatingSheet(r, $"the rating sheet of the loop of part '{name}'"),
            DisplacementM3 = r.OptionalQuantity("displacement"),
            SpeedRevPerS = r.OptionalQuantity("speed"),
            SupplyFrequencyHz = r.OptionalQuantity("supply-frequency"),
            Poles = r.WholeNumber("poles"),
            ShellCooling = CompressorReader.Cooling(r),
            ShellConductanceWPerK = r.OptionalQuantity("shell-conductance"),
            MaximumDischargeTemperatureK = r.OptionalQuantity("maximum-discharge-temperature"),
            CutOutK = r.OptionalQuantity("cut-out"),
            CondenserConductanceWPerK = r.Quantity("condenser-conductance"),
            CondenserAirFlowM3PerS = r.OptionalQuantity("condenser-air-flow"),
            EvaporatorConductanceWPerK = r.Quantity("evaporator-conductance"),
            SuperheatK = r.OptionalQuantity("superheat"),
            SubcoolingK = r.OptionalQuantity("subcooling"),
            Capillary = ThrottleReader.Capillary(r, $"the capillary of the loop of part '{name}'"),
            Valve = ThrottleReader.Valve(r, $"the valve of the loop of part '{name}'"),
        };
    }
}
