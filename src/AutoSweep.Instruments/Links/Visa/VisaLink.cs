using AutoSweep.Core;

namespace AutoSweep.Instruments.Links.Visa;

/// <summary>Opens instruments through the VISA library that is installed.</summary>
public static class VisaLink
{
    // Beyond the time that the library itself was given: a call to an unreachable host can outlast it.
    private static readonly TimeSpan Grace = TimeSpan.FromSeconds(5);

    /// <summary>Opens a resource.</summary>
    /// <param name="resource">The name that was asked for.</param>
    /// <param name="name">The name for the library.</param>
    /// <param name="settings">Time for connecting, the reply's terminator, the serial line's settings.</param>
    /// <param name="names">Where the library is looked for.</param>
    /// <param name="time">The clock behind every wait.</param>
    /// <param name="cancellationToken">Ends the attempt; the library's call goes on to its own end, and what it opens is closed.</param>
    /// <exception cref="BenchFaultException">No library, no such instrument, in use, or no answer.</exception>
    public static async Task<ILink> OpenAsync(
        ResourceName resource, string name, LinkSettings settings, VisaLibraryNames names, TimeProvider time,
        CancellationToken cancellationToken)
    {
        var library = VisaLibrary.Need(names, resource);
        var opening = Task.Factory.StartNew(
            () => VisaSession.Open(library, resource, name, settings), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            var port = await opening.WaitAsync(settings.ConnectTimeout + Grace, time, cancellationToken);
            return new MessageLink(resource, port, settings.ReplyTerminator, time);
        }
        catch (Exception exception) when (exception is TimeoutException or OperationCanceledException)
        {
            CloseWhenOpen(opening);
            cancellationToken.ThrowIfCancellationRequested();
            throw VisaSession.NotOpened(library, resource, VisaStatus.Of(VisaStatus.TimedOut));
        }
    }

    private static void CloseWhenOpen(Task<VisaPort> opening) => _ = opening.ContinueWith(
        static opened =>
        {
            if (opened.IsCompletedSuccessfully)
                opened.Result.Dispose();
            else
                _ = opened.Exception;
        },
        TaskScheduler.Default);
}
