using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Numerics;
using Coldwright.Quantities;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.Cooldown;

/// <summary>One call's work: the run, the plateau, the changes, and what is told of them.</summary>
internal sealed class CooldownSession(Plant plant, LoopMapMaker maker, CooldownOptions options, Action<string>? observer, CancellationToken cancel)
{
    private const double RoundStepK = 20, NearPlateauK = 10, SettledK = 1, PassedK = 0.2, ShownBeyond = 1.25, WarmUpEndK = 4, PatienceS = 10 * 3600, LargeResidual = 0.01;

    private readonly Hardware _hardware = plant.Hardware;
    private readonly double? _condensingK = plant.Hardware.Layout.Feed is { } feed ? new ProductSolver(feed, plant.Hardware.Machine.Room).CondensingK : null;

    public CooldownResult Run() => options.WarmUp ? WarmUp() : Cooldown();

    private double[] Timed(double fromK) => [.. Enumerable.Range(3, 12).Select(i => i * RoundStepK).Where(k => Math.Abs(k - fromK) > 0.5).Concat(options.TimedK).Concat(_condensingK is { } c ? [c] : Array.Empty<double>()).Distinct()];

    private CooldownRun Made(double[] factors, SeriesRecorder? recorder, IReadOnlyList<double> timed, bool sensitivity)
    {
        var slopes = sensitivity ? new SlopeRecorder(plant, options.SlopeTimesS) : null;
        var run = new CooldownRun(plant, maker, options with { Sensitivity = sensitivity }, factors, recorder is null ? null : recorder.Keep, cancel) { TimedK = timed, SlopesAt = slopes };
        run.Start(options.FromK);
        return run;
    }

    private CooldownResult Cooldown()
    {
        observer?.Invoke("property tables and maps of the parts");
        var recorder = new SeriesRecorder(plant);
        string? failed = null;
        double fromK = options.FromK ?? _hardware.RoomK;
        var run = Made(PlantParameters.Nominal(), recorder, Timed(fromK), options.Sensitivity);
        double? askedK = options.UntilK;
        bool asked = options.UntilS is not null || askedK is not null;
        // without a wish: as long as a person would wait, then on to where nothing moves
        run.To(options.UntilS ?? (asked ? CooldownRun.ForeverS : PatienceS), askedK, t => observer?.Invoke(FormattableString.Invariant($"{t / 60:0} min, load at {run.LoadK:0.0} K")));
        Require(run);
        if (run.Interrupted) asked = true;
        double askedEnd = run.TimeS;
        double[] endState = run.State.ToArray();
        var endPoint = run.Point(run.State);
        var (terms, narrowK, slopes) = (StopFinder.Terms(run.Equations, endPoint), StopFinder.Differences(run.Equations, endPoint).AtK, run.Slopes);
        observer?.Invoke("on to the plateau");
        if (options.Plateau && !run.Interrupted && run.TimeS < CooldownRun.ForeverS) run.To(CooldownRun.ForeverS, null, null);
        if (run.Stopped is { } no) failed = $"the plateau was not found: {no.Advice}";
        double plateau = run.LoadK;
        var full = recorder.Series(CooldownRun.ForeverS, null);
        double settled = Settled(full, plateau), end = asked ? askedEnd : Math.Min(ShownBeyond * settled + 600, full.TimeS[^1]);
        if (!asked && settled > PatienceS) (asked, end) = (true, askedEnd);
        else if (!asked)
        {
            if (run.Interrupted) end = run.TimeS;
            (endState, endPoint) = (run.State.ToArray(), run.Point(run.State));
            (terms, narrowK, slopes) = (StopFinder.Terms(run.Equations, endPoint), StopFinder.Differences(run.Equations, endPoint).AtK, run.Slopes);
        }
        var series = recorder.Series(end, null);
        double rate = Rate(series);
        string stops = StopFinder.Which(terms, asked ? rate : 0);
        var crossings = run.Crossings.ToArray();
        double referenceK = _condensingK is { } c && plateau < c - 0.5 ? c : plateau + NearPlateauK;
        var changes = options.Halving && !run.Interrupted ? Changes(plateau, referenceK, crossings.FirstOrDefault(x => x.TemperatureK == referenceK)?.TimeS ?? Passed(full, referenceK)) : [];
        return new CooldownResult
        {
            Model = maker.Model.Name,
            Stopped = run.Interrupted || cancel.IsCancellationRequested,
            HasPlateau = options.Plateau && !run.Interrupted,
            IsWarmUp = false,
            PlateauK = plateau,
            EndK = series.TemperatureK[^1],
            EndRateKPerH = rate,
            CondensingK = _condensingK,
            TimeToK = [.. Times(crossings, fromK).Where(t => t.TimeS is not null || !run.Interrupted)],
            StoppedBy = terms,
            Sentence = run.Interrupted ? CooldownWords.Interrupted(end, series.TemperatureK[^1], rate) : CooldownWords.Sentence(plant, narrowK, endPoint, terms, stops, plateau, asked ? series.TemperatureK[^1] : plateau, asked ? end : settled, rate, asked, _condensingK, crossings),
            Series = series,
            Events = Events(series, crossings, settled, asked),
            Masses = Masses(fromK, series.TemperatureK[^1], endState),
            Changes = changes,
            Sensitivities = options.Sensitivity && slopes is not null ? Slopes(slopes, endPoint.LoadK, crossings, referenceK) : [],
            Slopes = run.SlopesAt?.Slopes,
            EnergyError = run.EnergyError,
            LargestDrift = run.WorstDrift,
            DirectResidual = options.Direct ? run.HeatResidual : null,
            Circulating = new Composition(_hardware.Machine.Charge.Mixture.Names, run.Z),
            Steps = run.Steps,
            Warnings = failed is null ? [.. Warnings(run)] : [failed, .. Warnings(run)],
        };
    }

    private CooldownResult WarmUp()
    {
        observer?.Invoke(options.FromK is null ? "the cooldown that comes first" : "property tables and maps of the parts");
        double end = _hardware.RoomK - WarmUpEndK;
        var recorder = new SeriesRecorder(plant);
        var run = new CooldownRun(plant, maker, options with { Sensitivity = false }, PlantParameters.Nominal(), recorder.Keep, cancel) { TimedK = [] };
        run.Start(options.FromK);
        recorder.FromS = double.PositiveInfinity;
        if (options.FromK is null)
        {
            run.To(CooldownRun.ForeverS, null, t => observer?.Invoke(FormattableString.Invariant($"cooldown: {t / 60:0} min, load at {run.LoadK:0.0} K")));
            Require(run);
        }
        if (run.Interrupted) throw new OperationCanceledException(cancel);
        double fromK = run.LoadK, from = run.TimeS;
        double[] coldState = run.State.ToArray();
        recorder.FromS = from;
        run.ShutOff();
        observer?.Invoke("the warm-up");
        var timed = Timed(fromK).Where(k => k > fromK).ToArray();
        run.TimedK = timed;
        run.To(from + (options.UntilS ?? 60 * 86400), options.UntilK ?? end, null);
        Require(run);
        if (run.TimeS <= from) throw new OperationCanceledException(cancel);
        var rest = RestPressure.Of(_hardware, maker.Model, run.Charged, run.TotalMol, Math.Min(fromK, run.LoadK - 1), _hardware.RoomK, CancellationToken.None);
        var series = recorder.Series(double.PositiveInfinity, rest);
        var crossings = run.Crossings.Select(x => x with { TimeS = x.TimeS - from }).ToArray();
        return new CooldownResult
        {
            Model = maker.Model.Name,
            Stopped = run.Interrupted,
            IsWarmUp = true,
            PlateauK = _hardware.RoomK,
            EndK = run.LoadK,
            EndRateKPerH = Rate(series),
            CondensingK = _condensingK,
            TimeToK = [.. timed.Order().Select(k => new TimedTemperature(k, crossings.FirstOrDefault(c => c.TemperatureK == k)?.TimeS, What(k)))],
            StoppedBy = [],
            Sentence = CooldownWords.WarmUp(fromK, run.LoadK, series, _hardware.RoomK),
            Series = series,
            Events = [],
            Masses = Masses(run.LoadK, fromK, coldState),
            Changes = [],
            Sensitivities = [],
            EnergyError = run.EnergyError,
            LargestDrift = run.WorstDrift,
            DirectResidual = options.Direct ? run.HeatResidual : null,
            Circulating = _hardware.Machine.Charge.Mixture,
            Steps = run.Steps,
            Warnings = [.. Warnings(run), "while it warms up every place of the loop is taken in equilibrium with the charge's composition: liquid does not run off, and the heat that its evaporation takes is left out"],
        };
    }

    private static void Require(CooldownRun run)
    {
        if (run.Interrupted && run.TimeS <= 0) throw new OperationCanceledException();
        if (run.Stopped is not { } report) return;
        throw new SolveException(report.Telling($"the cooldown was followed to {run.TimeS / 60:0.#} min, with the load at {SpokenAmount.Temperature(run.LoadK, "0.#")}, and no further: {report.Told}"));
    }

    private string What(double k) => _condensingK is { } c && k == c ? $"{_hardware.Layout.Feed!.Gas} condenses" : options.TimedK.Contains(k) ? "asked for" : "";

    private IReadOnlyList<TimedTemperature> Times(Crossing[] crossings, double fromK) =>
        [.. Timed(fromK).Where(k => crossings.Any(c => c.TemperatureK == k) || What(k) != "").Select(k => new TimedTemperature(k, crossings.FirstOrDefault(c => c.TemperatureK == k)?.TimeS, What(k))).OrderBy(t => t.TimeS ?? double.PositiveInfinity)];

    // first time from which on the load stays near the plateau
    private static double Settled(CooldownSeries s, double plateau)
    {
        int i = s.TimeS.Count - 1;
        while (i > 0 && Math.Abs(s.TemperatureK[i - 1] - plateau) < SettledK) i--;
        return s.TimeS[i];
    }

    // when the load first falls below a temperature; null: never
    private static double? Passed(CooldownSeries s, double k)
    {
        for (int i = 1; i < s.TimeS.Count; i++)
            if (s.TemperatureK[i] <= k) return s.TimeS[i - 1] + (s.TimeS[i] - s.TimeS[i - 1]) * Math.Clamp((s.TemperatureK[i - 1] - k) / (s.TemperatureK[i - 1] - s.TemperatureK[i]), 0, 1);
        return null;
    }

    // over the last tenth of the time, K/h
    private static double Rate(CooldownSeries s)
    {
        int i = s.TimeS.Count - 1, j = i;
        while (j > 0 && s.TimeS[j] > 0.93 * s.TimeS[i]) j--;
        return j == i ? 0 : 3600 * (s.TemperatureK[i] - s.TemperatureK[j]) / (s.TimeS[i] - s.TimeS[j]);
    }

    private IReadOnlyList<CooldownEvent> Events(CooldownSeries s, Crossing[] crossings, double settled, bool asked)
    {
        var events = new List<CooldownEvent>();
        int peak = Enumerable.Range(0, s.TimeS.Count).MaxBy(i => s.HighPressurePa[i]);
        events.Add(new(s.TimeS[peak], Spoken.Of($"high side highest: {SpokenAmount.Pressure(s.HighPressurePa[peak])}")));
        int falls = Enumerable.Range(0, s.TimeS.Count).FirstOrDefault(i => s.TemperatureK[i] < s.TemperatureK[0] - 25, -1);
        if (falls > 0) events.Add(new(s.TimeS[falls], "the cold has come through the recuperator"));
        if (_condensingK is { } c && crossings.FirstOrDefault(x => x.TemperatureK == c) is { } passed) events.Add(new(passed.TimeS, $"{_hardware.Layout.Feed!.Gas} would condense from here on"));
        if (!asked && settled < s.TimeS[^1]) events.Add(new(settled, Spoken.Of($"within {SpokenAmount.Difference(SettledK, "0")} of the plateau")));
        return [.. events.Where(e => e.TimeS <= s.TimeS[^1]).OrderBy(e => e.TimeS)];
    }

    private IReadOnlyList<StoredMass> Masses(double warmK, double coldK, double[] state)
    {
        double[] none = PlantParameters.Nominal();
        double recuperator = 0, foam = 0, kg = 0, room = _hardware.RoomK;
        var l = plant.Layout;
        for (int i = 0; i < l.Cells; i++) recuperator += (plant.Metal.Heat(warmK + (room - warmK) * (i + 0.5) / l.Cells) - state[i]) * plant.CapacityOf(i, none);
        if (plant.Insulation is { } insulation)
        {
            double[] t = insulation.Settled(warmK);
            for (int i = 0; i < l.Insulation; i++)
            {
                foam += (insulation.Heat[i].Heat(t[i]) - state[l.FirstInsulation + i]) * plant.CapacityOf(l.FirstInsulation + i, none);
                kg += insulation.VolumeM3[i] * insulation.DensityKgPerM3[i];
            }
        }
        List<StoredMass> masses = [new(_hardware.Layout.Recuperator.Name, plant.RecuperatorKg, Math.Abs(recuperator)), .. plant.Bodies.Select(b => new StoredMass(b.Name, b.MassKg, b.HeatJ(warmK, coldK)))];
        if (plant.Insulation is not null) masses.Add(new("insulation", kg, Math.Abs(foam)));
        return [.. masses.OrderByDescending(m => m.HeatJ)];
    }

    // each change as a run of its own, on the maps already made where they suit
    private IReadOnlyList<CooldownChange> Changes(double plateau, double referenceK, double? before)
    {
        (string Id, string What, (int Index, double Factor)[] Factors)[] all =
        [
            ("leak", "half the heat leak", [(PlantParameters.Leak, 0.5)]),
            ("exchanger", "a recuperator with twice the films", [(PlantParameters.HighFilm, 2), (PlantParameters.LowFilm, 2)]),
            ("recuperator-metal", "half the recuperator's metal", [(PlantParameters.RecuperatorMetal, 0.5)]),
            ("load-mass", "half the masses at the load", [(PlantParameters.LoadMass, 0.5)]),
            ("insulation-heat", "half the heat in the insulation", [(PlantParameters.InsulationHeat, 0.5)]),
        ];
        var found = new List<CooldownChange>();
        foreach (var (id, what, factors) in all)
        {
            if (id is "leak" or "insulation-heat" && plant.Insulation is null) continue;
            observer?.Invoke($"with {what}");
            double[] f = PlantParameters.Nominal();
            foreach (var (i, v) in factors) f[i] = v;
            bool stored = factors.All(x => IsStored(x.Index));
            if (Changed(f, referenceK, stored) is not { } run) break;
            double? time = run.Crossings.Count > 0 ? run.Crossings[0].TimeS : null;
            if (run.Stopped is null) found.Add(new(id, what, stored ? 0 : run.LoadK - plateau, referenceK, before, time));
        }
        return found;
    }

    // to the end, or no further than the temperature whose time is asked for; null: cancelled
    private CooldownRun? Changed(double[] factors, double referenceK, bool noFurther)
    {
        try
        {
            var run = Made(factors, null, [referenceK], false);
            run.To(CooldownRun.ForeverS, noFurther ? referenceK - PassedK : null, null);
            return run.Interrupted ? null : run;
        }
        catch (OperationCanceledException)
        {
            return null;
        }
    }

    // what only stores heat has no say in where nothing moves
    private static bool IsStored(int index) => index is PlantParameters.RecuperatorMetal or PlantParameters.LoadMass or PlantParameters.InsulationHeat;

    private IReadOnlyList<CooldownSensitivity> Slopes(double[] slopes, double endK, Crossing[] crossings, double referenceK)
    {
        var l = plant.Layout;
        var at = crossings.MinBy(c => Math.Abs(c.TemperatureK - referenceK));
        return [.. Enumerable.Range(0, PlantParameters.Count).Select(i => new CooldownSensitivity(PlantParameters.Ids[i], PlantParameters.Names[i],
            slopes[i * l.Count + l.Load] / plant.Load.Capacity(endK), at?.ByFactor.Length > 0 ? at.ByFactor[i] : null))];
    }

    private IEnumerable<Spoken> Warnings(CooldownRun run)
    {
        foreach (string w in maker.Model.Warnings.Concat(_hardware.Said).Concat(plant.Said)) yield return w;
        if (_hardware.Layout.ColdBox is null) yield return "no cold-box is described: the heat leak is taken as zero and the plateau is too cold";
        if (_hardware.Layout.Precooler is { Loop: null }) yield return "the precooler is described by its outlet alone: it is taken to pull down within some minutes (our assumption)";
        else if (_hardware.Layout.Precooler is not null) yield return "the metal of the precooler's evaporator is not described: 30 s of its conductance were taken as heat capacity (our assumption)";
        if (_hardware.Layout.Feed is not null) yield return "the fill valve is taken as shut: the vessel holds the gas it held warm, and nothing condenses";
        if (run.EnergyError > 1e-6) yield return FormattableString.Invariant($"energy closes only to {run.EnergyError:0.0e+0}");
        if (run.HeatResidual > LargeResidual) yield return FormattableString.Invariant($"without tables: {100 * run.HeatResidual:0.#} % of the cooling flows otherwise than the model's own properties have it");
        foreach (var w in Limits(run)) yield return w;
    }

    private IEnumerable<Spoken> Limits(CooldownRun run)
    {
        var highest = run.HighestPa;
        foreach (var part in new Part?[] { _hardware.Layout.Compressor, _hardware.Layout.Aftercooler, _hardware.Layout.WarmExchanger, _hardware.Layout.Precooler, _hardware.Layout.Recuperator })
            if (part?.MaximumPressurePa is { } most && highest > most)
                yield return Spoken.Of($"in the first minutes the high side rises to {SpokenAmount.Pressure(highest)}, above the {SpokenAmount.Pressure(most)} allowed for {part.Name}");
        foreach (var relief in _hardware.Machine.PartsOf<ReliefPart>())
            if (highest > relief.SetPressurePa && _hardware.Machine.Lines.Any(x => x.To == relief.Name && _hardware.Layout.LoopPath.Any(s => s.Part.Name == Machine.Insulation.ColdBoxContents.PartName(x.From))))
                yield return Spoken.Of($"in the first minutes the high side rises to {SpokenAmount.Pressure(highest)}, above the set pressure of {relief.Name} ({SpokenAmount.Pressure(relief.SetPressurePa)}): it would let off charge");
    }
}
