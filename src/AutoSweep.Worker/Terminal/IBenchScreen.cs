namespace AutoSweep.Worker.Terminal;

/// <summary>Shows the bench to the person in front of the terminal.</summary>
public interface IBenchScreen
{
    /// <summary>Shows until told to close.</summary>
    /// <param name="closing">Closes the screen; the last state stays visible.</param>
    Task ShowAsync(CancellationToken closing);
}
