using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Sim.Hands;

/// <summary>The hands at the clip: they follow the script, clip by clip, and go on when they hear the meter beep.</summary>
/// <remarks>
/// They know nothing of the worker: one that is killed finds the clip where it was when it comes back. An output that nobody beeped
/// for is tried again at the end of the phase, at most <see cref="Rounds"/> times in all.
/// </remarks>
internal sealed class BenchHands(
    HandsDefinition script, SimulatedBench bench, BeepEar ear, Action<HandsEvent> tell, int seed)
{
    /// <summary>How often one output is offered before the hands give it up.</summary>
    public const int Rounds = 3;

    /// <summary>Before the first clip of a phase the hands walk round the bench.</summary>
    public static readonly TimeSpan BetweenPhases = TimeSpan.FromSeconds(20);

    private readonly Random random = new(seed);

    public async Task RunAsync(IReadOnlyList<HandsPhase> phases, CancellationToken cancellationToken)
    {
        for (var i = 0; i < phases.Count; i++)
        {
            if (i > 0) await Task.Delay(BetweenPhases, bench.Clock, cancellationToken);
            await RunAsync(phases[i], cancellationToken);
        }
    }

    private async Task RunAsync(HandsPhase phase, CancellationToken cancellationToken)
    {
        Tell("begin", phase);
        var steps = Steps(phase);
        for (var round = 1; round <= Rounds && steps.Count > 0; round++)
        {
            var unanswered = new List<HandsStep>();
            foreach (var step in steps)
            {
                if (!await StepAsync(phase, step, cancellationToken)) unanswered.Add(step);
            }

            steps = unanswered;
            if (steps.Count > 0 && round < Rounds) Tell("retry", phase);
        }

        Tell("end", phase);
    }

    private IReadOnlyList<HandsStep> Steps(HandsPhase phase) => phase switch
    {
        HandsPhase.Survey => script.Survey,
        HandsPhase.Sweep => script.Sweep,
        HandsPhase.AsLeft => [.. script.Survey.Select(step => step.Output).Distinct().Order().Select(output => new HandsStep { Output = output })],
        _ => [.. bench.Soldered.Select(output => new HandsStep { Output = output })],
    };

    private async Task<bool> StepAsync(HandsPhase phase, HandsStep step, CancellationToken cancellationToken)
    {
        await Task.Delay(Pause(step), bench.Clock, cancellationToken);
        // Listening begins before the clip is on: on a fast clock the beep may follow at once.
        var signal = ear.ListenAsync(script.PatienceOn(bench.Clock), bench.Clock, cancellationToken);
        bench.Clip(step.Output, phase == HandsPhase.Sweep);
        Tell("clip", phase, step.Output, step.Note);
        var answered = await signal;
        Tell(answered ? "beep" : "noBeep", phase, step.Output);
        await Task.Delay(TimeSpan.FromSeconds(script.ReactionSeconds), bench.Clock, cancellationToken);
        bench.Unclip();
        Tell("unclip", phase, step.Output);
        return answered;
    }

    private TimeSpan Pause(HandsStep step) =>
        TimeSpan.FromSeconds(step.PauseSeconds ?? (script.PauseSeconds * (1 + random.NextDouble())));

    private void Tell(string what, HandsPhase phase, int? output = null, string? note = null) =>
        tell(new(bench.Clock.Now.TotalSeconds, what, phase, output, note));
}
