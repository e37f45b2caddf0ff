using System.Runtime.InteropServices;

namespace AutoSweep.Instruments.Links.Usbtmc;

/// <summary>Linux error numbers (include/uapi/asm-generic/errno.h), the same on x86-64 and arm64.</summary>
internal static class LinuxError
{
    public const int Interrupted = 4;
    public const int NotPermitted = 13;
    public const int NoDevice = 19;
    public const int TimedOut = 110;

    public static string Words(int error) =>
        error == NoDevice ? "the instrument was unplugged or switched off" : Marshal.GetPInvokeErrorMessage(error);
}
