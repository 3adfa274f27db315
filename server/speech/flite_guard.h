// flite ends the process when it meets an error of its own, unless it is told where to jump to, and
// that place is one for the whole process. Here it is kept.
#pragma once

namespace say::flite {

// Runs `call(data)`, one at a time in the whole process. False if flite met an error: the call was
// then left where it stood, so it must own nothing while it is within flite.
bool guarded(void (*call)(void* data), void* data);

} // namespace say::flite
