using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Faults;

/// <summary>The simulated bench's hands on a jumping clock: clip by clip along the script, on at every beep.</summary>
internal sealed class QuickHands(SimulatedBench bench, HandsDefinition script, JumpingClock clock, int seed)
{
    private readonly Random random = new(seed);
    private Queue<HandsStep> steps = [];
    private bool fixture;
    private bool listening;
    private int round;

    /// <summary>Puts the clip down and takes up a phase's script.</summary>
    public void Begin(bool withFixture)
    {
        (fixture, steps, listening) = (withFixture, new(withFixture ? script.Sweep : script.Survey), false);
        round++;
        bench.Unclip();
        ClipNext();
    }

    /// <summary>The meter has beeped.</summary>
    public void Hear()
    {
        if (!listening) return;
        listening = false;
        After(script.ReactionSeconds, () =>
        {
            bench.Unclip();
            ClipNext();
        });
    }

    private void ClipNext()
    {
        if (!steps.TryDequeue(out var step)) return;
        After(step.PauseSeconds ?? (script.PauseSeconds * (1 + random.NextDouble())), () =>
        {
            bench.Clip(step.Output, fixture);
            listening = true;
            After(script.PatienceSeconds, Hear);
        });
    }

    // What was meant to be done does not outlive the next thing that is done.
    private void After(double seconds, Action what)
    {
        var meant = ++round;
        clock.After(TimeSpan.FromSeconds(seconds), () =>
        {
            if (meant == round) what();
        });
    }
}
