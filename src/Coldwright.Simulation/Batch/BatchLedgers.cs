namespace Coldwright.Simulation.Batch;

/// <summary>Where the gas went, kg. Fed equals the sum of the others.</summary>
/// <param name="FedKg">Left the supply.</param>
/// <param name="LinesKg">More in the feed lines at the end than at the start.</param>
/// <param name="VapourLeftKg">Never left the vessel as liquid: what it holds more than at the start, and vapour that went out through the drain.</param>
/// <param name="FlashedKg">Boiled when the liquid was let down to the room's pressure, in and behind the valve.</param>
/// <param name="LineBoilKg">Boiled by the warm drain line and by the room's heat into it.</param>
/// <param name="FlaskBoilKg">Boiled by the warm flask and by the heat into it.</param>
/// <param name="CollectedKg">Liquid in the flask at the end.</param>
public sealed record GramLedger(double FedKg, double LinesKg, double VapourLeftKg, double FlashedKg, double LineBoilKg, double FlaskBoilKg, double CollectedKg)
{
    /// <summary>Fed less the others, over fed.</summary>
    public double Error => (FedKg - LinesKg - VapourLeftKg - FlashedKg - LineBoilKg - FlaskBoilKg - CollectedKg) / Math.Max(FedKg, 1e-6);
}

/// <summary>Parts of the gram ledger, kg.</summary>
/// <param name="VapourBlownKg">Of the vapour left: went out through the drain.</param>
/// <param name="LiquidLeftKg">Liquid in the vessel at the end, which would not run out.</param>
/// <param name="SeatLeakKg">Passed the shut drain valve; it is part of what flashed and boiled.</param>
/// <param name="DischargedKg">Went through the drain as liquid.</param>
/// <param name="CondensedKg">Most liquid that was in the vessel at once.</param>
public sealed record GramDetails(double VapourBlownKg, double LiquidLeftKg, double SeatLeakKg, double DischargedKg, double CondensedKg);

/// <summary>
/// Heat and enthalpy into vessel, drain line and flask, J: positive came in, negative went out or was stored; the sum is nothing. Enthalpies count
/// from the product's gas at the room's temperature and pressure, so vapour that leaves cold counts as heat brought in: its cold is lost.
/// </summary>
/// <param name="Entries">Name and J.</param>
/// <param name="Error">Sum over the largest entry.</param>
public sealed record JouleLedger(IReadOnlyList<(string Name, double Joules)> Entries, double Error);
