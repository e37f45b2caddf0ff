namespace AutoSweep.Worker.Page.Work;

/// <summary>Something that the work wants to know from the person at the bench.</summary>
/// <param name="Text">The question in lines, as the terminal would show it; empty where only keys are waited for.</param>
/// <param name="WantsKey">Whether a key is enough: go, skip, undo, stop. Otherwise a line is typed.</param>
public sealed record Question(string Text, bool WantsKey)
{
    /// <summary>Tells this question from every other, so that a late click on one screen never answers the next one.</summary>
    public Guid Id { get; } = Guid.NewGuid();

    /// <summary>What a screen may show larger than the lines; none where the lines are all.</summary>
    public ByHand.BenchQuestion? Detail { get; init; }
}
