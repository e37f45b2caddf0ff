using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;
using AutoSweep.Sim.Scpi;

namespace AutoSweep.Sim.Meter;

/// <summary>The measurement under way, and the samples of the last one.</summary>
internal sealed class Measurement(MeterDefinition meter, SimulatedBench bench) : IDisposable
{
    private readonly LevelSampler sampler = new(meter);
    private readonly FrequencyCounter counter = new(meter);
    private CancellationTokenSource abort = new();
    private TaskCompletionSource? trigger;
    private Task<double[]>? running;

    private bool Busy => running is { IsCompleted: false };

    /// <summary>INITiate: leaves the idle state and, unless it waits for a trigger, begins to sample.</summary>
    public void Start(MeterSettings settings)
    {
        if (Busy) throw new ScpiErrorException(ScpiError.InitIgnored);
        abort.Dispose();
        abort = new();
        trigger = settings.Trigger == TriggerSource.Immediate ? null : new(TaskCreationOptions.RunContinuationsAsynchronously);
        running = MeasureAsync(settings, bench.Clock.Now, abort.Token).AsTask();
    }

    /// <summary>*TRG: fires a measurement that waits for the bus.</summary>
    public void Trigger(MeterSettings settings)
    {
        if (!Busy || settings.Trigger != TriggerSource.Bus || trigger?.TrySetResult() != true)
            throw new ScpiErrorException(ScpiError.TriggerIgnored);
    }

    /// <summary>FETCh?: waits for the samples. An interruption leaves the measurement running, as a meter does.</summary>
    public async ValueTask<string?> FetchAsync(CancellationToken interrupted)
    {
        if (running is null or { IsCompletedSuccessfully: false, IsCompleted: true }) throw new ScpiErrorException(ScpiError.StaleData);
        try
        {
            return string.Join(',', (await running.WaitAsync(interrupted)).Select(Arguments.Nr3));
        }
        catch (OperationCanceledException) when (!interrupted.IsCancellationRequested)
        {
            throw new ScpiErrorException(ScpiError.StaleData);
        }
    }

    public void Abort()
    {
        abort.Cancel();
        running = null;
    }

    public void Dispose()
    {
        abort.Cancel();
        abort.Dispose();
    }

    /// <summary>Ends when nothing is under way.</summary>
    public async ValueTask SettledAsync(CancellationToken interrupted)
    {
        if (running is null) return;
        await ((Task)running).WaitAsync(interrupted).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        interrupted.ThrowIfCancellationRequested();
    }

    private async ValueTask<double[]> MeasureAsync(MeterSettings settings, TimeSpan from, CancellationToken aborted)
    {
        var samples = new double[settings.Triggers * settings.Samples];
        if (trigger is { } armed)
        {
            await armed.Task.WaitAsync(aborted);
            from = bench.Clock.Now;
        }

        for (var i = 0; i < samples.Length; i++)
        {
            from += TimeSpan.FromSeconds(settings.DelayInForce + settings.ApertureSeconds);
            await bench.Clock.WaitUntilAsync(from, aborted);
            samples[i] = bench.Look(from, view => Sample(view, settings));
        }

        return samples;
    }

    private double Sample(BenchView view, MeterSettings settings) => settings.Function == MeterFunction.Frequency
        ? counter.Count(view, settings.GateSeconds, settings.FrequencyAutoRange ? AutoRange(view) : settings.FrequencyRange)
        : sampler.Sample(
            view, settings.AutoRange ? AutoRange(view) : settings.Range, MeterSettings.LevelApertureSeconds, settings.FilterHertz);

    private static double AutoRange(BenchView view) => MeterSettings.RangeFor(view.DetectorVolts / 1.2);
}
