namespace AutoSweep.Worker.ByHand;

/// <summary>What a question to the person at the bench is about.</summary>
public enum BenchQuestionKind
{
    /// <summary>What the meter shows.</summary>
    Level,

    /// <summary>Dials are to be turned.</summary>
    Dials,

    /// <summary>The box is to be measured as it stands.</summary>
    Box,
}
