using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Bench;

/// <summary>Steps the fixture through likely capacitances for the one that gives most level, so that there is something to count.</summary>
/// <param name="bench">The bench.</param>
/// <param name="levels">Reads the levels.</param>
/// <param name="record">The job, for what is still missing.</param>
/// <param name="clock">The bench's clock.</param>
public sealed class LevelHunt(ConnectedBench bench, LevelReader levels, JobRecord record, TimeProvider clock)
{
    // A filter of Q 10 is heard within a tenth of its peak; steps of a fifth, 40 % to either side, meet it or its neighbour's flank.
    private static readonly double[] Spread = [1, 0.83, 1.2, 0.69, 1.44];

    // Half a step of the hunt, as a standard deviation of the logarithm.
    private const double StepLogSpread = 0.1;

    // Enough to come within a tenth of a half-width; the sweep itself will do better.
    private const int RefiningBudget = 6;

    // A level that stands out is this many times the median of the hunt.
    private const double StandsOut = 1.5;

    /// <summary>Sets the fixture to the loudest place found.</summary>
    /// <returns>False when no place stands out from the others: nothing tuned is clipped.</returns>
    public async Task<bool> SettleOnLoudestAsync(CancellationToken cancellationToken)
    {
        var missing = record.Profile.FilteredOutputs.Where(output => !record.State.IsDone(JobStage.Sweep, output.Number)).ToList();
        await levels.PrepareAsync(ToneWatch.LargestLevel, missing.Select(output => record.Profile.ToneOf(output)).Min(), cancellationToken);
        List<(Capacitance Place, double Volts)> heard = [];
        foreach (var place in Places(missing))
        {
            var (_, sample) = await bench.WithSetAsync(place, () => levels.ReadAsync(cancellationToken, samples: 2, span: TimeSpan.Zero), cancellationToken);
            heard.Add((place, sample.Mean.Volts));
        }

        var loudest = heard.MaxBy(one => one.Volts);
        var standsOut = loudest.Volts > StandsOut * heard.Select(one => one.Volts).Order().ElementAt(heard.Count / 2);
        await bench.Fixture.SetAsync(standsOut ? await PeakNearAsync(loudest.Place, cancellationToken) : loudest.Place, cancellationToken);
        return standsOut;
    }

    /// <summary>Whether the fixture still is where it settled, or was set to: silence says nothing where its watchdog has opened the relays.</summary>
    public Task<bool> StandsAsync(CancellationToken cancellationToken) => bench.Fixture.StandsAsync(cancellationToken);

    // The same search that sweeps an output: it needs no tone, only the level.
    private async Task<Capacitance> PeakNearAsync(Capacitance place, CancellationToken cancellationToken)
    {
        var began = clock.GetTimestamp();
        var search = new PeakSearch(
            new() { Expected = place, LogSpread = StepLogSpread },
            new() { Smallest = bench.Fixture.Smallest, Largest = bench.Fixture.Largest, Budget = RefiningBudget });
        while (search.Next() is PeakStep.Read wanted)
        {
            var (set, sample) = await bench.WithSetAsync(wanted.Capacitance, () => levels.ReadAsync(cancellationToken), cancellationToken);
            search.Tell(new(set, sample.Mean, sample.RelativeNoise, clock.GetElapsedTime(began), sample.Settled));
        }

        return ((PeakStep.Done)search.Next()).Result.Peak is { } peak && CanSet(peak) ? peak : place;
    }

    private IEnumerable<Capacitance> Places(List<GeneratorOutput> missing) =>
        missing.Select(output => output.Capacitor!.ExpectedPicofarads)
            .Distinct()
            .SelectMany(value => Spread.Select(step => Capacitance.FromPicofarads(value * step)))
            .Where(CanSet);

    private bool CanSet(Capacitance place) => place >= bench.Fixture.Smallest && place <= bench.Fixture.Largest;
}
