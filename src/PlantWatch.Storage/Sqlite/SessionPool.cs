using System.Collections.Concurrent;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Read sessions, kept with their prepared statements for the next reader.</summary>
internal sealed class SessionPool(string path) : IDisposable
{
    private readonly ConcurrentBag<Session> idle = [];
    private volatile bool closed;

    /// <summary>Runs work on a session of its own.</summary>
    public T Read<T>(Func<Session, T> work)
    {
        ObjectDisposedException.ThrowIf(closed, this);
        if (!idle.TryTake(out var session)) session = Session.OpenReader(path);
        try
        {
            var result = work(session);
            Return(session);
            return result;
        }
        catch
        {
            // It may stand in the middle of an answer: the next reader gets a fresh one.
            session.Dispose();
            throw;
        }
    }

    public void Dispose()
    {
        closed = true;
        while (idle.TryTake(out var session)) session.Dispose();
    }

    private void Return(Session session)
    {
        idle.Add(session);
        // Closed meanwhile: nobody else would dispose of it.
        if (closed) Dispose();
    }
}
