namespace AutoSweep.Worker.Bench;

/// <summary>The sounds that tell the person what happened without looking.</summary>
public enum BenchSound
{
    /// <summary>The output is done; the meter beeps once.</summary>
    Done,

    /// <summary>Something is odd, please look; the meter beeps twice.</summary>
    Question,

    /// <summary>The output at the clips was recognised by itself: hands off now. The meter is silent.</summary>
    Recognised,

    /// <summary>What is clipped is not what is wanted; the meter beeps twice.</summary>
    WrongOutput,
}
