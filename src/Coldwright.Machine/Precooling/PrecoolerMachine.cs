using Coldwright.Machine.Compression;

namespace Coldwright.Machine.Precooling;

/// <summary>A precooling loop as built: own compressor, condenser in the room, evaporator on the mixture, expansion device. Own input record, SI.</summary>
public sealed record PrecoolerMachine
{
    /// <summary>The compressor; from a nameplate by <see cref="NameplateDisplacement"/>.</summary>
    public required CompressorMachine Compressor { get; init; }
    /// <summary>Its rating sheet, used instead of the physical model when given.</summary>
    public TranslatedMap? Map { get; init; }
    /// <summary>The condenser.</summary>
    public required AirCondenser Condenser { get; init; }
    /// <summary>The evaporator.</summary>
    public required MixtureEvaporator Evaporator { get; init; }
    /// <summary>What meters the liquid.</summary>
    public required ExpansionDevice Expansion { get; init; }
    /// <summary>Share of the way to the room's temperature that the gas warms in the suction line, 0 to 1; useless superheat. 0.2: common practice for a metre of thinly insulated line.</summary>
    public double SuctionLineGain { get; init; } = 0.2;
    /// <summary>Dew temperature below which a pressure switch or thermostat stops the compressor, K, 60 to 300; the loop then cycles. Null: none.</summary>
    public double? CutOutK { get; init; }
    /// <summary>Pour point of the oil, K, 150 to 300; 233 K (-40 C) is common practice for low-temperature polyolester, no published source.</summary>
    public double OilPourPointK { get; init; } = 233.15;

    internal void Check()
    {
        Condenser.Check();
        Evaporator.Check();
        Expansion.Check();
        InputCheck.Within(SuctionLineGain, 0, 1, "", nameof(SuctionLineGain));
        InputCheck.Optional(CutOutK, 60, 300, "K", nameof(CutOutK));
        InputCheck.Within(OilPourPointK, 150, 300, "K", nameof(OilPourPointK));
    }
}
