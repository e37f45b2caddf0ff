using System.Runtime.InteropServices;
using AutoSweep.Core;
using Microsoft.Win32.SafeHandles;

namespace AutoSweep.Instruments.Links.Usbtmc;

/// <summary>A device file, through the C library: a stream of the platform would buffer, seek and lock it.</summary>
public sealed partial class UsbtmcFile : IUsbtmcFile
{
    private const int ReadWriteCloseOnExec = 2 | 0x80000;

    private readonly SafeFileHandle _handle;

    private UsbtmcFile(SafeFileHandle handle) => _handle = handle;

    /// <summary>Opens a device file.</summary>
    /// <param name="path">Such as <c>/dev/usbtmc0</c>.</param>
    /// <exception cref="BenchFaultException">Not there, or not permitted.</exception>
    public static UsbtmcFile Open(string path)
    {
        var descriptor = open(path, ReadWriteCloseOnExec);
        return descriptor >= 0 ? new(new(descriptor, ownsHandle: true)) : throw NotOpened(path, Marshal.GetLastPInvokeError());
    }

    /// <inheritdoc/>
    public int Write(ReadOnlySpan<byte> bytes)
    {
        nint count;
        while ((count = write(_handle, bytes, (nuint)bytes.Length)) < 0 && WasInterrupted)
        {
        }

        return Answer(count);
    }

    /// <inheritdoc/>
    public int Read(Span<byte> buffer)
    {
        nint count;
        while ((count = read(_handle, buffer, (nuint)buffer.Length)) < 0 && WasInterrupted)
        {
        }

        return Answer(count);
    }

    /// <inheritdoc/>
    public int Control(UsbtmcRequest request, ref uint value) => Answer(ioctl(_handle, (nuint)request, ref value));

    /// <inheritdoc/>
    public void Dispose() => _handle.Dispose();

    private static bool WasInterrupted => Marshal.GetLastPInvokeError() == LinuxError.Interrupted;

    private static int Answer(nint result) => result >= 0 ? (int)result : -Marshal.GetLastPInvokeError();

    private static BenchFaultException NotOpened(string path, int error) => error == LinuxError.NotPermitted
        ? new(
            BenchFault.NotReachable,
            $"the USB instrument's device file {path}, which you may not open",
            "a device file that you may read and write",
            "Add a udev rule such as KERNEL==\"usbtmc[0-9]*\", MODE=\"0660\", GROUP=\"dialout\" and be in that group, then plug the "
            + "instrument in again.")
        : new(
            BenchFault.NotReachable,
            $"no device file {path} that can be opened: {LinuxError.Words(error)}. {UsbtmcDevices.OfThisMachine.Words}",
            "the device file of a USB instrument that is plugged in and on",
            "Switch the instrument on and plug it in, set its USB to USBTMC (not to a serial port or a drive), and run autosweep "
            + "instruments for the names that there are.");

    [LibraryImport("libc", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int open(string path, int flags);

    [LibraryImport("libc", SetLastError = true)]
    private static partial nint write(SafeFileHandle file, ReadOnlySpan<byte> bytes, nuint count);

    [LibraryImport("libc", SetLastError = true)]
    private static partial nint read(SafeFileHandle file, Span<byte> buffer, nuint count);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int ioctl(SafeFileHandle file, nuint request, ref uint value);
}
