using System.Runtime.InteropServices;

namespace AutoSweep.Sim.Wire;

/// <summary>One file to wait for (POSIX.1-2017, struct pollfd).</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct PollRequest
{
    public int File;
    public short Events;
    public short Returned;
}
