using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Precooling;
using Coldwright.Machine.Tests.Compression;

namespace Coldwright.Machine.Tests.Precooling;

/// <summary>Loops and loads that several tests use.</summary>
internal static class PrecoolerCases
{
    public const double Room = 298.15;

    public static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>A small loop: 8 cm3 reciprocating, condenser with fan, thermostatic valve.</summary>
    public static PrecoolerMachine Small { get; } = new()
    {
        Compressor = CompressorCases.Machine(CompressorKind.Reciprocating, 8),
        Condenser = new AirCondenser { ConductanceWPerK = 60, AirFlowM3PerS = 0.15, FanPowerW = 25 },
        Evaporator = new MixtureEvaporator { ConductanceWPerK = 25 },
        Expansion = new ThermostaticExpansion(6),
    };

    /// <summary>No superheat, no subcooling, no line gain, huge exchangers, no losses: the ideal cycle.</summary>
    public static PrecoolerMachine Ideal { get; } = Small with
    {
        Compressor = CompressorCases.Lossless() with { Cooling = new ShellCooling { ConductanceWPerK = 0 } },
        Condenser = new AirCondenser { ConductanceWPerK = 200, SubcoolingK = 0 },
        Expansion = new ThermostaticExpansion(0),
        SuctionLineGain = 0,
    };

    /// <summary>The five-component mixture at 18 bar from 300 K; propane and isobutane condense on the way down.</summary>
    public static MixtureLoad Mixture(double molarFlow, double inletK = 300) =>
        MixtureLoad.Create(new Flash(ReferenceModel.Create(CompressorCases.MixtureNames)), CompressorCases.Mixture, 18e5, inletK, molarFlow, cancel: Stop);
}
