namespace AutoSweep.Instruments.Links.Usbtmc;

/// <summary>Opens USBTMC instruments through the kernel's device files.</summary>
public static class UsbtmcLink
{
    /// <summary>Opens a device file.</summary>
    /// <param name="resource">The name that was asked for.</param>
    /// <param name="path">The device file.</param>
    /// <param name="settings">The reply's terminator.</param>
    /// <param name="time">The clock behind the wait for an answer.</param>
    /// <exception cref="Core.BenchFaultException">Not there, or not permitted.</exception>
    public static MessageLink Open(ResourceName resource, string path, LinkSettings settings, TimeProvider time) =>
        Over(UsbtmcFile.Open(path), resource, settings, time);

    /// <summary>A link over an open device file, which it owns from now on.</summary>
    public static MessageLink Over(IUsbtmcFile file, ResourceName resource, LinkSettings settings, TimeProvider time) =>
        new(resource, new UsbtmcPort(file, settings.ReplyTerminator), settings.ReplyTerminator, time);
}
