namespace AutoSweep.Worker.ByHand;

/// <summary>One dial of a box as a screen shows it.</summary>
/// <param name="Step">What a step adds, as printed on the box: <c>100 nF</c>.</param>
/// <param name="Position">Where it shall stand.</param>
/// <param name="IsTurned">Whether it stands elsewhere now, or nobody has said where it stands.</param>
public sealed record ShownDial(string Step, int Position, bool IsTurned);
