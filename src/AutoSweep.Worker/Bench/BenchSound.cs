namespace AutoSweep.Worker.Bench;

/// <summary>The sounds that tell the person what happened without looking.</summary>
public enum BenchSound
{
    /// <summary>The output is done: one beep.</summary>
    Done,

    /// <summary>Something is odd, please look: two beeps.</summary>
    Question,
}
